package org.vestibule.assign;

import java.time.LocalDateTime;

/**
 * While a phone's page was open for one visit a photograph came in by it.
 *
 * @param opened when the page was opened, on the practice's clock
 * @param received when the photograph was here
 */
public record PhoneStay(LocalDateTime opened, LocalDateTime received) {

  /** True if every reading of its time lies between, so that it was taken for this visit. */
  boolean holds(PhotoTime time) {
    return !time.missing()
        && time.readings().stream()
            .noneMatch(taken -> taken.isBefore(opened) || taken.isAfter(received));
  }
}
