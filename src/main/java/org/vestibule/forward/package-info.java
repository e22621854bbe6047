/**
 * Feeding the imaging archive: each object is brought to each destination, until the destination
 * itself has said that it keeps it.
 *
 * <p>{@link org.vestibule.forward.Archive} is what one destination is to the courier, whatever it
 * speaks. What was sent, answered and confirmed stands in the ledger ({@code store.ledger});
 * nothing here is believed because it was sent.
 */
@NullMarked
package org.vestibule.forward;

import org.jspecify.annotations.NullMarked;
