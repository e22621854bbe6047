package org.vestibule.card;

import java.io.IOException;
import org.vestibule.words.Words;

/** What people read on a visit card. */
final class VisitDrawing {

  private VisitDrawing() {}

  static void draw(CardPen pen, Symbol symbol, VisitFace visit, Words words) throws IOException {
    pen.codes(symbol);
    float left = CardLayout.LEFT_CODE;
    float width = CardLayout.TEXT_WIDTH;
    pen.text(visit.time(), left, 82, 8, 40);
    pen.text(visit.name(), left + 44, 82, 6, width - 44);
    pen.text(words.say("visit", visit.visit()), left, 90, 3.6f, width);
    pen.text(words.say("visit-use"), left, 97, 2.5f, width);
    if (!pen.canPrint(visit.name())) {
      pen.warn(
          "the card of visit "
              + visit.visit()
              + " shows boxes in place of letters that the font lacks: hand it out by time and"
              + " visit");
    }
    if (!pen.canPrint(visit.visit())) {
      pen.warn("a visit's key has letters that the font lacks: they are printed as boxes");
    }
  }
}
