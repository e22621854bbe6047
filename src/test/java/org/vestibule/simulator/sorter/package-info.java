/** The program's own sorting, put to the simulator of rolls. */
@NullMarked
package org.vestibule.simulator.sorter;

import org.jspecify.annotations.NullMarked;
