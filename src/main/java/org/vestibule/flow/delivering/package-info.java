/** The use cases of delivery: bringing objects to archives, and what a person does about it. */
@NullMarked
package org.vestibule.flow.delivering;

import org.jspecify.annotations.NullMarked;
