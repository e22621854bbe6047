/**
 * Rolls of invented practice days, with what was really photographed and what went wrong, to try
 * the sorting of rolls on.
 *
 * <p>Written from what the trade knows to go wrong, without a look at how rolls are sorted: nothing
 * here depends on {@code assign}; the adapter in {@code sorter} does. A {@link
 * org.vestibule.simulator.RollSorter} is shown what the program would see ({@link
 * org.vestibule.simulator.SeenDay}); truth stays with the {@link org.vestibule.simulator.Scorer}.
 */
@NullMarked
package org.vestibule.simulator;

import org.jspecify.annotations.NullMarked;
