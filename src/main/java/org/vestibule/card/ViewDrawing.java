package org.vestibule.card;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Teeth;
import org.vestibule.words.TradeWords;
import org.vestibule.words.Words;

/** What people read on a view card. */
final class ViewDrawing {

  private static final float PICTURE_WIDTH = 24;
  private static final float PICTURE_HEIGHT = 18;
  private static final float PICTURE_TOP = 73;
  private static final int TEETH = 4;
  private static final float LETTER = 2.6f;
  private static final float NAME = 5;
  private static final float NAME_OF_TWO = 4;

  private final ViewCard card;
  private final String name;
  private final Words words;
  private final TradeWords trade;

  /**
   * A card to draw.
   *
   * @param name the view's, in the language of the words
   */
  ViewDrawing(ViewCard card, String name, Words words, TradeWords trade) {
    this.card = card;
    this.name = name;
    this.words = words;
    this.trade = trade;
  }

  void draw(CardPen pen, Symbol symbol) throws IOException {
    pen.codes(symbol);
    float left = CardLayout.LEFT_CODE;
    float width =
        card.incisors() == null ? CardLayout.TEXT_WIDTH : CardLayout.TEXT_WIDTH - PICTURE_WIDTH - 6;
    float line = name(pen, left, width);
    Teeth teeth = card.teeth();
    if (teeth != null && !teeth.isEmpty()) {
      String said = capital(trade.teeth(teeth));
      pen.text(pen.fits(said, LETTER, width) ? said : teeth.text(), left, line, LETTER, width);
      line += LETTER + 1.4f;
    }
    for (String says : howTaken()) {
      pen.text(says, left, line, LETTER, width);
      line += LETTER + 1.4f;
    }
    pen.text(words.say("view-use"), left, 97, 2.5f, CardLayout.TEXT_WIDTH);
    if (card.incisors() != null) {
      picture(pen, card.incisors());
    }
    if (!pen.canPrint(name)) {
      pen.warn("the card of view " + card.view() + " shows boxes for letters that the font lacks");
    }
  }

  /** The name on one line, or on two smaller ones if it is too long; where the next line stands. */
  private float name(CardPen pen, float left, float width) throws IOException {
    int comma = name.lastIndexOf(", ");
    if (pen.fits(name, NAME, width) || comma < 0) {
      pen.text(name, left, 78, NAME, width);
      return 83.5f;
    }
    pen.text(name.substring(0, comma + 1), left, 75.5f, NAME_OF_TWO, width);
    pen.text(name.substring(comma + 2), left, 80.5f, NAME_OF_TWO, width);
    return 85;
  }

  private List<String> howTaken() {
    List<String> says = new ArrayList<>();
    String mirror = card.mirror() == null ? "" : words.say("mirror-" + key(card.mirror()));
    String stage =
        card.stage() == null ? "" : words.say("stage", trade.stage(card.stage().words()));
    if (!mirror.isEmpty() || !stage.isEmpty()) {
      says.add(mirror.isEmpty() || stage.isEmpty() ? mirror + stage : mirror + ". " + stage);
    }
    if (card.incisors() != null) {
      says.add(words.say("incisors-" + key(card.incisors())));
    }
    return says;
  }

  private static String key(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The stored picture as a frame, and four teeth at the edge where the incisors must lie. */
  private static void picture(CardPen pen, Incisors edge) throws IOException {
    float left = CardLayout.LEFT_CODE + CardLayout.TEXT_WIDTH - PICTURE_WIDTH;
    pen.frame(left, PICTURE_TOP, PICTURE_WIDTH, PICTURE_HEIGHT, 0.4f);
    float size = 3.2f;
    float gap = 0.6f;
    float row = TEETH * size + (TEETH - 1) * gap;
    for (int i = 0; i < TEETH; i++) {
      float at = i * (size + gap) - row / 2;
      float x = left + PICTURE_WIDTH / 2 + at;
      float y = PICTURE_TOP + PICTURE_HEIGHT / 2 + at;
      float near = 1.2f;
      switch (edge) {
        case TOP -> y = PICTURE_TOP + near;
        case BOTTOM -> y = PICTURE_TOP + PICTURE_HEIGHT - near - size;
        case LEFT -> x = left + near;
        case RIGHT -> x = left + PICTURE_WIDTH - near - size;
      }
      pen.box(x, y, size, size);
    }
  }

  private static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }
}
