/** Settled files become hashed arrivals, then photographs with facts and warnings. */
@NullMarked
package org.vestibule.intake;

import org.jspecify.annotations.NullMarked;
