package org.vestibule.forward;

import java.util.Map;
import java.util.Set;

/** What an archive can show. */
public sealed interface PresenceAnswer {

  /**
   * It answered.
   *
   * @param found SOP Instance UID to the identifiers under which the archive shows it: keyword to
   *     value, as far as it gave them (StudyInstanceUID, SeriesInstanceUID, PatientID,
   *     AccessionNumber); what was asked for and is not here is not shown
   */
  record Answered(Map<String, Map<String, String>> found) implements PresenceAnswer {
    public Answered {
      found = Map.copyOf(found);
    }
  }

  /**
   * About some of the objects it gave no answer, which does not mean that it has them not.
   *
   * @param status as the archive gave it, or -1
   * @param words one line for people
   * @param sessionOver true if the session can't be used any more
   * @param found what it answered before and beside, as in {@link Answered}
   * @param open SOP Instance UIDs of those without an answer
   */
  record Failed(
      int status,
      String words,
      boolean sessionOver,
      Map<String, Map<String, String>> found,
      Set<String> open)
      implements PresenceAnswer {
    public Failed {
      found = Map.copyOf(found);
      open = Set.copyOf(open);
    }
  }
}
