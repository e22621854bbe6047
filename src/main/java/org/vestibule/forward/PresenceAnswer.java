package org.vestibule.forward;

import java.util.Map;

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
   * It could not be asked.
   *
   * @param status as the archive gave it, or -1
   * @param words one line for people
   * @param sessionOver true if the session can't be used any more
   */
  record Failed(int status, String words, boolean sessionOver) implements PresenceAnswer {}
}
