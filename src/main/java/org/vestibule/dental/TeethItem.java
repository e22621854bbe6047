package org.vestibule.dental;

import java.util.List;
import java.util.Optional;

/**
 * What stands between two separators: teeth, areas, and at most one word about what stands there.
 *
 * @param marks what was written in a notation, so that mixtures can be told
 */
record TeethItem(
    List<Tooth> teeth, List<Area> areas, List<Mark> marks, Optional<Occupant> occupant) {

  /** A tooth or area code as it was written, how it was read, and in which notation. */
  record Mark(String said, String readAs, Notation notation) {
    String words() {
      return "\"" + said + "\" is " + readAs + " in " + notation.words();
    }
  }
}
