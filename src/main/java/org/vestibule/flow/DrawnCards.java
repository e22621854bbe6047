package org.vestibule.flow;

import java.util.List;
import org.vestibule.card.CardSheet;

/**
 * A day's visit cards.
 *
 * @param sheet to be printed
 * @param cards how many cards are on it
 * @param without visits that got no card because list and record disagree about them
 */
public record DrawnCards(CardSheet sheet, int cards, List<String> without) {
  public DrawnCards {
    without = List.copyOf(without);
  }
}
