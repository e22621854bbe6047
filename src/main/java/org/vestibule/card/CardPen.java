package org.vestibule.card;

import java.io.IOException;
import java.util.Set;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/**
 * Draws on one card of a page, in millimetres from the card's top left corner, black on white.
 *
 * <p>A page is four cards; {@link #place} says which is drawn on.
 */
final class CardPen implements AutoCloseable {

  private static final float POINTS = 72 / 25.4f;
  private static final float PAGE_WIDTH = 297;
  private static final float PAGE_HEIGHT = 210;
  static final PDRectangle A4_LYING = new PDRectangle(PAGE_WIDTH * POINTS, PAGE_HEIGHT * POINTS);

  private static final float HAIRLINE = 0.2f;
  private static final float TICK = 6;

  /** Height of capitals in Liberation Sans, of the font size. */
  private static final float CAPITALS = 0.69f;

  /** How much smaller a text that is too wide may become. */
  private static final float LEAST = 0.6f;

  private final PDPageContentStream stream;
  private final CardFont font;
  private final Set<String> warnings;
  private float left;
  private float top;

  CardPen(PDDocument document, PDPage page, CardFont font, Set<String> warnings)
      throws IOException {
    this.stream = new PDPageContentStream(document, page);
    this.font = font;
    this.warnings = warnings;
  }

  /** Goes to one of the page's four cards. */
  void place(int column, int row) {
    left = column * PAGE_WIDTH / 2 + (PAGE_WIDTH / 2 - CardLayout.WIDTH) / 2;
    top = row * PAGE_HEIGHT / 2;
  }

  /** Short lines at the edges and a cross in the middle, where the sheet is cut. */
  void cutMarks() throws IOException {
    left = 0;
    top = 0;
    float across = PAGE_WIDTH / 2;
    float down = PAGE_HEIGHT / 2;
    line(across, 0, across, TICK, HAIRLINE);
    line(across, PAGE_HEIGHT - TICK, across, PAGE_HEIGHT, HAIRLINE);
    line(0, down, TICK, down, HAIRLINE);
    line(PAGE_WIDTH - TICK, down, PAGE_WIDTH, down, HAIRLINE);
    line(across - TICK / 2, down, across + TICK / 2, down, HAIRLINE);
    line(across, down - TICK / 2, across, down + TICK / 2, HAIRLINE);
  }

  void line(float x1, float y1, float x2, float y2, float thick) throws IOException {
    stream.setLineWidth(thick * POINTS);
    stream.moveTo(x(x1), y(y1));
    stream.lineTo(x(x2), y(y2));
    stream.stroke();
  }

  void frame(float x, float y, float width, float height, float thick) throws IOException {
    stream.setLineWidth(thick * POINTS);
    stream.addRect(x(x), y(y + height), width * POINTS, height * POINTS);
    stream.stroke();
  }

  void box(float x, float y, float width, float height) throws IOException {
    stream.addRect(x(x), y(y + height), width * POINTS, height * POINTS);
    stream.fill();
  }

  /**
   * A text on a line, made smaller if it is too wide, and cut if it still is.
   *
   * @param y of the line on which the letters stand
   * @param size height of a capital
   */
  void text(String text, float x, float y, float size, float width) throws IOException {
    String shown = font.printable(text);
    float points = size / CAPITALS * POINTS;
    float room = width * POINTS;
    float least = points * LEAST;
    while (points > least && font.width(shown, points) > room) {
      points -= 0.25f;
    }
    if (font.width(shown, points) > room) {
      shown = cut(shown, points, room);
    }
    stream.beginText();
    stream.setFont(font.font(), points);
    stream.newLineAtOffset(x(x), y(y));
    stream.showText(shown);
    stream.endText();
  }

  /** True if a text stands on a line without being cut. */
  boolean fits(String text, float size, float width) throws IOException {
    float least = size / CAPITALS * POINTS * LEAST;
    return font.width(font.printable(text), least) <= width * POINTS;
  }

  private String cut(String text, float points, float room) throws IOException {
    int[] letters = text.codePoints().toArray();
    int kept = letters.length;
    while (kept > 1 && font.width(new String(letters, 0, kept) + "...", points) > room) {
      kept--;
    }
    return new String(letters, 0, kept) + "...";
  }

  /** True if every letter of a text can be printed. */
  boolean canPrint(String text) {
    return !font.printable(text).contains(CardFont.BOX);
  }

  void warn(String sentence) {
    warnings.add(sentence);
  }

  /** A code twice, the second one upside down. */
  void codes(Symbol symbol) throws IOException {
    code(symbol, CardLayout.LEFT_CODE, false);
    code(symbol, CardLayout.RIGHT_CODE, true);
  }

  /** Runs of dark modules along a row are drawn as one, so that no gap shows between them. */
  private void code(Symbol symbol, float x, boolean upsideDown) throws IOException {
    int side = symbol.side();
    float module = CardLayout.CODE / side;
    for (int row = 0; row < side; row++) {
      int start = -1;
      for (int column = 0; column <= side; column++) {
        boolean dark =
            column < side
                && (upsideDown
                    ? symbol.dark(side - 1 - column, side - 1 - row)
                    : symbol.dark(column, row));
        if (dark && start < 0) {
          start = column;
        } else if (!dark && start >= 0) {
          stream.addRect(
              x(x + start * module),
              y(CardLayout.CODE_TOP + (row + 1) * module),
              (column - start) * module * POINTS,
              module * POINTS);
          start = -1;
        }
      }
    }
    stream.fill();
  }

  private float x(float millimetres) {
    return (left + millimetres) * POINTS;
  }

  private float y(float millimetres) {
    return (PAGE_HEIGHT - top - millimetres) * POINTS;
  }

  @Override
  public void close() throws IOException {
    stream.close();
  }
}
