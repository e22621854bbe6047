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
   * @param seen false if the picture itself can't be opened, so that nobody knows whether a card is
   *     in it: its place in the order counts as a card's, and what it shows is another question
   */
  record Refused(String reason, String advice, boolean seen) implements CardSighting {

    /** A card that was seen. */
    public Refused(String reason, String advice) {
      this(reason, advice, true);
    }

    /** A picture that can't be opened. */
    public static Refused unopened(String reason, String advice) {
      return new Refused(reason, advice, false);
    }
  }
}
