package org.vestibule.card;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Notation;
import org.vestibule.dental.Stage;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.TeethReader;

/**
 * What a view card's text says: the view's key in capitals, a colon, one letter each for mirror,
 * incisors and stage, a colon, the teeth in ISO 3950 numbers. A hyphen stands for what the card
 * doesn't say: {@code UPPER-OCCLUSAL:STB:13-23}.
 */
final class ViewText {

  private static final char NOTHING = '-';
  private static final Letters<Mirror> MIRRORS =
      new Letters<>("NSCU", List.of(Mirror.NONE, Mirror.AS_SHOT, Mirror.CORRECTED, Mirror.UNKNOWN));
  private static final Letters<Incisors> EDGES =
      new Letters<>("TBLR", List.of(Incisors.TOP, Incisors.BOTTOM, Incisors.LEFT, Incisors.RIGHT));
  private static final Letters<Stage> STAGES =
      new Letters<>(
          "BIPDAF",
          List.of(
              Stage.BEFORE,
              Stage.ISOLATED,
              Stage.PREPARED,
              Stage.DURING,
              Stage.AFTER,
              Stage.FOLLOW_UP));

  /** Letters that stand for values, in the same order. */
  private record Letters<E>(String letters, List<E> values) {

    char of(@Nullable E value) {
      return value == null ? NOTHING : letters.charAt(values.indexOf(value));
    }

    boolean know(char letter) {
      return letter == NOTHING || letters.indexOf(letter) >= 0;
    }

    @Nullable E value(char letter) {
      return letter == NOTHING ? null : values.get(letters.indexOf(letter));
    }
  }

  private static final String KEY = "[A-Z0-9]+(-[A-Z0-9]+)*";
  private static final String NOTATION = "FDI ";
  private static final String COMMA = ", ";
  private static final String PLUS = "+";

  private ViewText() {}

  static String of(ViewCard card) {
    return card.view().toUpperCase(Locale.ROOT)
        + ':'
        + MIRRORS.of(card.mirror())
        + EDGES.of(card.incisors())
        + STAGES.of(card.stage())
        + ':'
        + teeth(card.teeth());
  }

  /** The card that a text says; empty if there is none. */
  static Optional<ViewCard> read(String text) {
    String[] parts = text.split(":", -1);
    if (parts.length != 3 || !parts[0].matches(KEY) || parts[1].length() != 3) {
      return Optional.empty();
    }
    if (!MIRRORS.know(parts[1].charAt(0))
        || !EDGES.know(parts[1].charAt(1))
        || !STAGES.know(parts[1].charAt(2))) {
      return Optional.empty();
    }
    Teeth teeth = null;
    if (!parts[2].isEmpty()) {
      Outcome<Teeth> read =
          new TeethReader(Notation.ISO_3950).read(NOTATION + parts[2].replace(PLUS, COMMA));
      if (!(read instanceof Outcome.Done<Teeth> done) || !teeth(done.value()).equals(parts[2])) {
        return Optional.empty();
      }
      teeth = done.value();
    }
    return Optional.of(
        new ViewCard(
            parts[0].toLowerCase(Locale.ROOT),
            teeth,
            MIRRORS.value(parts[1].charAt(0)),
            EDGES.value(parts[1].charAt(1)),
            STAGES.value(parts[1].charAt(2))));
  }

  private static String teeth(@Nullable Teeth teeth) {
    if (teeth == null || teeth.isEmpty()) {
      return "";
    }
    String text = teeth.text(Notation.ISO_3950);
    return text.substring(NOTATION.length()).replace(COMMA, PLUS).toUpperCase(Locale.ROOT);
  }
}
