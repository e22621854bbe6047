/** The IOD checker: findings in words about a VL Photographic object. */
@NullMarked
package org.vestibule.check;

import org.jspecify.annotations.NullMarked;
