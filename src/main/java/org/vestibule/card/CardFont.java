package org.vestibule.card;

import java.io.IOException;
import java.io.InputStream;
import java.text.Normalizer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * The font of the cards: Liberation Sans, which comes with PDFBox under the SIL Open Font License
 * and may be embedded. It has Latin, Greek and Cyrillic letters; what it lacks, and scripts that
 * run from right to left, are printed as a box.
 */
final class CardFont {

  /** What stands in place of a letter that can't be printed. */
  static final String BOX = "\u25A1";

  private static final String FILE = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";
  private static final float THOUSAND = 1000;

  private final PDType0Font font;

  private CardFont(PDType0Font font) {
    this.font = font;
  }

  static CardFont into(PDDocument document) throws IOException {
    try (InputStream file = PDDocument.class.getResourceAsStream(FILE)) {
      if (file == null) {
        throw new IllegalStateException("PDFBox came without its font");
      }
      return new CardFont(PDType0Font.load(document, file, true));
    }
  }

  PDType0Font font() {
    return font;
  }

  /** The text with a box for each letter that can't be printed. */
  String printable(String text) {
    StringBuilder printable = new StringBuilder();
    Normalizer.normalize(text, Normalizer.Form.NFC)
        .codePoints()
        .forEach(
            letter -> {
              String one = Character.toString(letter);
              printable.append(has(letter, one) ? one : BOX);
            });
    return printable.toString();
  }

  private boolean has(int letter, String one) {
    byte direction = Character.getDirectionality(letter);
    if (direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT
        || direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC
        || Character.getType(letter) == Character.CONTROL) {
      return false;
    }
    try {
      font.encode(one);
      return true;
    } catch (IllegalArgumentException lacking) {
      return false;
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  /** The text's width, in the unit of the size. */
  float width(String text, float size) throws IOException {
    return font.getStringWidth(text) / THOUSAND * size;
  }
}
