package org.vestibule.flow;

import java.util.Optional;
import org.vestibule.base.ContentHash;
import org.vestibule.card.CardSighting;
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

  /** Keeps what was seen; the photograph must have been recorded. */
  void keep(ContentHash hash, CardSighting sighting) {
    arrivals.facts(hash, KIND, CardJson.write(sighting));
    if (sighting instanceof CardSighting.OneCard) {
      arrivals.mark(hash, StoreVerifier.CARD, StoreVerifier.CARD);
    }
  }
}
