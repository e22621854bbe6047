package org.vestibule.simulator;

import org.jspecify.annotations.Nullable;
import org.vestibule.card.Card;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;

/** What a photograph really shows. */
public sealed interface Subject {

  /**
   * A clinical photograph.
   *
   * @param visit key of the visit it belongs to; null if no list will ever have that visit
   * @param view key of the view in the catalogue
   * @param mirror how it was really taken
   * @param incisors where the incisors really lie in the raw picture; null where that says nothing
   */
  record Clinical(
      String patient,
      @Nullable String visit,
      String view,
      Mirror mirror,
      @Nullable Incisors incisors)
      implements Subject {}

  /** A card alone. */
  record OfCard(Card card) implements Subject {}

  /** Something of private life. */
  record OfPrivateLife() implements Subject {}
}
