package org.vestibule.dicom.net;

import java.util.List;
import java.util.Locale;

/**
 * How the other side answered a request (PS3.7 annex C, PS3.4 for each service).
 *
 * @param status the 16 bits of (0000,0900)
 * @param words what the status means
 * @param again true if the same request may succeed later
 * @param comment the other side's own words, empty if none; they may name a patient, so keep them
 *     out of messages
 * @param offending tags that it complains of or changed, as eight hexadecimal digits
 */
public record Answer(
    Kind kind, int status, String words, boolean again, String comment, List<String> offending) {

  /** What an answer amounts to. */
  public enum Kind {
    SUCCESS,
    WARNING,
    FAILURE,
    PENDING,
    CANCELLED
  }

  public Answer {
    offending = List.copyOf(offending);
  }

  /** True if what was asked for was done, maybe with a warning. */
  public boolean isDone() {
    return kind == Kind.SUCCESS || kind == Kind.WARNING;
  }

  /** The words with the status as the standard writes it, such as {@code (status A700)}. */
  public String sentence() {
    return words + String.format(Locale.ROOT, " (status %04X)", status);
  }
}
