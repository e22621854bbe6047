package org.vestibule.release;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Base64;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.image.JPEGFactory;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;

/** The sheet as one page of A4; the same sheet gives the same bytes. */
final class PdfSheet {

  /** More would be too small to tell a tooth. */
  static final int MOST = 42;

  private static final String FONT = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";
  private static final float MARGIN = 36;
  private static final float HEAD = 60;
  private static final float GAP = 10;
  private static final float LINE = 1.25f;
  private static final int LINES = 5;

  private final PDDocument document;
  private final PDFont font;
  private final PDPageContentStream page;

  private PdfSheet(PDDocument document, PDFont font, PDPageContentStream page) {
    this.document = document;
    this.font = font;
    this.page = page;
  }

  /**
   * The file's bytes.
   *
   * @param number tells this document from others, in place of the time of writing
   */
  static byte[] of(Sheet sheet, long number) throws IOException {
    try (PDDocument document = new PDDocument();
        InputStream letters = PDDocument.class.getResourceAsStream(FONT)) {
      document.setDocumentId(number);
      PDPage page = new PDPage(PDRectangle.A4);
      document.addPage(page);
      PDFont font = PDType0Font.load(document, letters, true);
      try (PDPageContentStream content = new PDPageContentStream(document, page)) {
        new PdfSheet(document, font, content).draw(sheet);
      }
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      document.save(out);
      return out.toByteArray();
    }
  }

  private void draw(Sheet sheet) throws IOException {
    float top = PDRectangle.A4.getHeight() - MARGIN;
    float width = PDRectangle.A4.getWidth() - 2 * MARGIN;
    text(sheet.title(), MARGIN, top - 14, 14, width);
    float at = top - 30;
    for (String line : sheet.about()) {
      text(line, MARGIN, at, 8, width);
      at -= 8 * LINE;
    }
    int columns = columns(sheet.rows().size());
    int lines = (sheet.rows().size() + columns - 1) / columns;
    float cellWidth = (width + GAP) / columns;
    float cellHeight = (top - HEAD - MARGIN + GAP) / lines;
    for (int i = 0; i < sheet.rows().size(); i++) {
      int line = i / columns;
      float x = MARGIN + i % columns * cellWidth;
      float y = top - HEAD - line * cellHeight;
      cell(sheet.rows().get(i), x, y, cellWidth - GAP, cellHeight - GAP, columns > 3 ? 5 : 7);
    }
  }

  private static int columns(int pictures) {
    int columns = 1;
    while (columns * (columns + 1) < pictures) {
      columns++;
    }
    return columns;
  }

  private void cell(SheetRow row, float x, float top, float width, float height, float size)
      throws IOException {
    float words = LINES * size * LINE;
    float scale = Math.min(width / row.width(), (height - words) / row.height());
    float wide = row.width() * scale;
    float high = row.height() * scale;
    byte[] jpeg = Base64.getDecoder().decode(row.thumbnail());
    PDImageXObject picture = JPEGFactory.createFromByteArray(document, jpeg);
    page.drawImage(picture, x, top - high, wide, high);
    float at = top - high - size * LINE;
    String right = row.right();
    text(row.left(), x, at, size, wide / 2);
    text(right, x + wide - Math.min(width(right, size), wide / 2), at, size, wide / 2);
    for (String line :
        new String[] {row.view(), row.teeth(), row.who(), row.when() + "  " + row.name()}) {
      at -= size * LINE;
      text(line, x, at, size, width);
    }
  }

  private void text(String text, float x, float y, float size, float width) throws IOException {
    String shown = drawable(text.strip());
    while (shown.length() > 1 && width(shown, size) > width) {
      shown = shown.substring(0, shown.length() - 1);
    }
    page.beginText();
    page.setFont(font, size);
    page.newLineAtOffset(x, y);
    page.showText(shown);
    page.endText();
  }

  private float width(String text, float size) throws IOException {
    return font.getStringWidth(drawable(text)) / 1000 * size;
  }

  /** Letters that the font lacks become question marks: the files beside the sheet have them. */
  private String drawable(String text) {
    StringBuilder drawable = new StringBuilder();
    text.codePoints()
        .forEach(
            letter -> {
              String one = Character.toString(letter);
              drawable.append(has(one) ? one : "?");
            });
    return drawable.toString();
  }

  private boolean has(String letter) {
    try {
      font.encode(letter);
      return true;
    } catch (IllegalArgumentException | IOException lacking) {
      return false;
    }
  }
}
