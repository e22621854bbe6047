package org.vestibule.flow;

import java.util.Optional;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.card.CardReader;
import org.vestibule.card.CardSighting;
import org.vestibule.intake.Photo;
import org.vestibule.store.StoreVerifier;
import org.vestibule.store.ledger.Arrivals;

/** Which photographs show a card. Each is looked at once; the ledger keeps what was seen. */
final class CardSightings {

  /** Names what is kept by the reader's version: a better one looks again. */
  private static final String KIND = CardJson.KIND + " 1";

  private final Arrivals arrivals;

  CardSightings(Practice practice) {
    this.arrivals = practice.store().ledger().arrivals();
  }

  /** What was seen in a photograph; empty if nobody looked yet. */
  Optional<CardSighting> known(ContentHash hash) {
    return arrivals.facts(hash, KIND).map(CardJson::read);
  }

  /** True if a card was read in a photograph. */
  boolean isCard(ContentHash hash) {
    return known(hash).filter(CardSighting.OneCard.class::isInstance).isPresent();
  }

  /** What there is to see. A picture that can't be read shows a card that can't be read. */
  static CardSighting look(Photo photo) {
    Outcome<CardSighting> seen;
    try {
      seen = photo.bytes().then(CardReader::read);
    } catch (RuntimeException | StackOverflowError | OutOfMemoryError failure) {
      // One photograph must not end the run; it counts as one that may show a card.
      return CardSighting.Refused.unopened(
          "the program failed when it looked for a card ("
              + failure.getClass().getSimpleName()
              + ")",
          "please report this; the photograph can be filed by hand");
    }
    return seen instanceof Done<CardSighting> done
        ? done.value()
        : CardSighting.Refused.unopened(
            ((Refused<CardSighting>) seen).reason(), ((Refused<CardSighting>) seen).advice());
  }

  /** Keeps what was seen; the photograph must have been recorded. */
  void keep(ContentHash hash, CardSighting sighting) {
    arrivals.facts(hash, KIND, CardJson.write(sighting));
    if (sighting instanceof CardSighting.OneCard) {
      arrivals.mark(hash, StoreVerifier.CARD, StoreVerifier.CARD);
    }
  }
}
