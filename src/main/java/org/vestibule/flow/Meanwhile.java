package org.vestibule.flow;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.vestibule.base.Outcome.Refused;

/**
 * What became of a photograph while somebody else still decided about it.
 *
 * @param who by whom
 */
public record Meanwhile(Kind kind, String who, Instant at) {

  /** In which way. */
  public enum Kind {
    FILED("filed"),
    CORRECTED("corrected"),
    OUT("taken back or taken out");

    private final String words;

    Kind(String words) {
      this.words = words;
    }
  }

  /** On which day of the practice. */
  public LocalDate day(ZoneId zone) {
    return at.atZone(zone).toLocalDate();
  }

  <T> Refused<T> refusal(ZoneId zone) {
    return new Refused<>(
        "this photograph was " + kind.words + " meanwhile by " + who + " on " + day(zone),
        "nothing was changed; look at it again, then decide");
  }
}
