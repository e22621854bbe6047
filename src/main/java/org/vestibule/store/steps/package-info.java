/** The points between which a process can die while it writes. */
@NullMarked
package org.vestibule.store.steps;

import org.jspecify.annotations.NullMarked;
