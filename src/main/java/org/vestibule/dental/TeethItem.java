package org.vestibule.dental;

import java.util.List;
import java.util.Optional;

/**
 * What stands between two separators: teeth, areas, and at most one word about what stands there.
 *
 * @param mentions the teeth as they were written, ends of ranges only
 */
record TeethItem(
    List<Tooth> teeth,
    List<Area> areas,
    List<ToothMention> mentions,
    Optional<Occupant> occupant) {}
