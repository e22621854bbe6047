package org.vestibule.assign;

import java.time.LocalDateTime;
import java.util.Comparator;
import org.jspecify.annotations.Nullable;
import org.vestibule.card.CardSighting;
import org.vestibule.card.ViewCard;
import org.vestibule.card.VisitCard;

/**
 * A photograph in the order of its device.
 *
 * @param seen the photograph
 * @param time on the practice's clock, corrected as the site says
 * @param number in its name, if its phone counts
 */
record Member(Seen seen, PhotoTime time, @Nullable FileNumber number) {

  /** By time taken with its fraction, then by file number, then by name. */
  static final Comparator<Member> ORDER =
      Comparator.comparing(Member::at)
          .thenComparing(each -> each.number == null ? -1 : each.number.value())
          .thenComparing(each -> each.seen.name());

  static Member of(Seen seen, PhotoTime time) {
    return new Member(seen, time, FileNumber.of(seen.name()).orElse(null));
  }

  /** Its time; only for one that has a time. */
  LocalDateTime at() {
    return time.readings().get(0);
  }

  /** The token of the visit card in it; null if it shows none that was read. */
  @Nullable String token() {
    return seen.sighting() instanceof CardSighting.OneCard one
            && one.card() instanceof VisitCard card
        ? card.token()
        : null;
  }

  /** The view card in it; null if it shows none that was read. */
  @Nullable ViewCard viewCard() {
    return seen.sighting() instanceof CardSighting.OneCard one
            && one.card() instanceof ViewCard card
        ? card
        : null;
  }

  boolean isPhotograph() {
    return !seen.showsCard();
  }

  boolean isCopy() {
    return number != null && number.copy();
  }

  /** True if its time and its place in the order are as the camera left them. */
  boolean isOriginal() {
    return !isCopy() && !seen.facts().edited();
  }
}
