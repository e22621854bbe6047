package org.vestibule.card;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Teeth;

/** What people read on a view card. */
final class ViewDrawing {

  private static final String USE =
      "Photograph this card, then take one photograph that shows this.";
  private static final float PICTURE_WIDTH = 24;
  private static final float PICTURE_HEIGHT = 18;
  private static final float PICTURE_TOP = 73;
  private static final int TEETH = 4;
  private static final float LETTER = 2.6f;

  private ViewDrawing() {}

  static void draw(CardPen pen, Symbol symbol, ViewCard card, String name) throws IOException {
    pen.codes(symbol);
    float left = CardLayout.LEFT_CODE;
    float width =
        card.incisors() == null ? CardLayout.TEXT_WIDTH : CardLayout.TEXT_WIDTH - PICTURE_WIDTH - 6;
    pen.text(name, left, 78, 5, width);
    Teeth teeth = card.teeth();
    float line = 83.5f;
    if (teeth != null && !teeth.isEmpty()) {
      pen.text(capital(teeth.words()), left, line, LETTER, width);
      line += LETTER + 1.4f;
    }
    for (String says : howTaken(card)) {
      pen.text(says, left, line, LETTER, width);
      line += LETTER + 1.4f;
    }
    pen.text(USE, left, 97, 2.5f, CardLayout.TEXT_WIDTH);
    if (card.incisors() != null) {
      picture(pen, card.incisors());
    }
    if (!pen.canPrint(name)) {
      pen.warn("the card of view " + card.view() + " shows boxes for letters that the font lacks");
    }
  }

  private static List<String> howTaken(ViewCard card) {
    List<String> says = new ArrayList<>();
    String mirror = mirror(card.mirror());
    String stage = card.stage() == null ? "" : "Stage: " + card.stage().words();
    if (!mirror.isEmpty() || !stage.isEmpty()) {
      says.add(mirror.isEmpty() || stage.isEmpty() ? mirror + stage : mirror + ". " + stage);
    }
    if (card.incisors() != null) {
      says.add(
          "Incisors at the "
              + card.incisors().name().toLowerCase(Locale.ROOT)
              + " of the stored picture");
    }
    return says;
  }

  private static String mirror(@Nullable Mirror mirror) {
    if (mirror == null) {
      return "";
    }
    return switch (mirror) {
      case NONE -> "Without a mirror";
      case AS_SHOT -> "In a mirror, not flipped";
      case CORRECTED -> "In a mirror, flipped by the camera";
      case UNKNOWN -> "Mirror not known";
    };
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
