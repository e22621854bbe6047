package org.vestibule.forward.worklist;

import java.util.List;

/**
 * What a worklist answered for a day.
 *
 * @param entries those that can be used and that were asked for
 * @param oddities what can't be used, each a sentence without patient data
 * @param others how many answers were for another day, station or modality than was asked for
 * @param more true if the worklist had more than were taken
 */
public record WorklistAnswer(
    List<WorklistEntry> entries, List<String> oddities, int others, boolean more) {
  public WorklistAnswer {
    entries = List.copyOf(entries);
    oddities = List.copyOf(oddities);
  }
}
