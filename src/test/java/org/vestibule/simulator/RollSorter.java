package org.vestibule.simulator;

import java.util.Map;

/** Sorts a roll as the program would, run by run. */
@FunctionalInterface
public interface RollSorter {

  /**
   * What becomes of the files in one run. A file that is missing from the answer counts as waiting.
   *
   * @param day all that is known at the time of {@link SeenDay#run()}
   * @param before what earlier runs filed or set aside, by {@link SeenPhoto#key()}; that is done,
   *     and another answer for the same file is not looked at
   * @return for each file by {@link SeenPhoto#key()} what was done with it
   */
  Map<String, Sorted> sort(SeenDay day, Map<String, Sorted> before);
}
