/** A question in a practitioner's words becomes photographs. */
@NullMarked
package org.vestibule.search;

import org.jspecify.annotations.NullMarked;
