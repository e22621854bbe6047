package org.vestibule.flow.look;

import java.util.List;

/**
 * A part of a sheet under one heading.
 *
 * @param heading its heading
 * @param lead a sentence below the heading; may be empty
 * @param cards what it holds, shown as cards if the first has a picture and as lines otherwise
 */
public record SheetSection(String heading, String lead, List<Card> cards) {

  public SheetSection {
    cards = List.copyOf(cards);
  }

  boolean hasPictures() {
    return !cards.isEmpty() && cards.get(0).picture() != null;
  }
}
