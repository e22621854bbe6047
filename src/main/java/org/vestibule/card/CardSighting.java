package org.vestibule.card;

import org.vestibule.card.CardSighting.NoCard;
import org.vestibule.card.CardSighting.OneCard;
import org.vestibule.card.CardSighting.Refused;

/** What a look for cards saw in a photograph. */
public sealed interface CardSighting permits NoCard, OneCard, Refused {

  /** Nothing that looks like a card. */
  record NoCard() implements CardSighting {}

  /** Exactly one card, read without doubt. */
  record OneCard(Card card) implements CardSighting {}

  /**
   * A card that must not be used: several in one frame, a code that fails its check, one of a later
   * version, or one that can be seen but not read.
   *
   * @param reason what was seen, as a sentence
   * @param advice what to do, as a sentence
   */
  record Refused(String reason, String advice) implements CardSighting {}
}
