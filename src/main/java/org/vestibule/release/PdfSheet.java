package org.vestibule.release;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
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

  /** Smaller letters than this many points can't be read. */
  private static final float LEAST = 3.5f;

  /** How much of a picture's place its words may take. */
  private static final float WORDS_AT_MOST = 0.6f;

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
    text(sheet.title(), MARGIN, top - 14, 14);
    float at = top - 30;
    for (String about : sheet.about()) {
      for (String line : wrapped(about, 8, width)) {
        text(line, MARGIN, at, 8);
        at -= 8 * LINE;
      }
    }
    float head = Math.max(HEAD, top - at + 10);
    int columns = columns(sheet.rows().size());
    int lines = (sheet.rows().size() + columns - 1) / columns;
    float cellWidth = (width + GAP) / columns;
    float cellHeight = (top - head - MARGIN + GAP) / lines;
    for (int i = 0; i < sheet.rows().size(); i++) {
      int line = i / columns;
      float x = MARGIN + i % columns * cellWidth;
      float y = top - head - line * cellHeight;
      SheetRow row = sheet.rows().get(i);
      cell(row, sheet.words(), x, y, cellWidth - GAP, cellHeight - GAP, columns > 3 ? 5 : 7);
    }
  }

  private static int columns(int pictures) {
    int columns = 1;
    while (columns * (columns + 1) < pictures) {
      columns++;
    }
    return columns;
  }

  private void cell(
      SheetRow row, SheetWords words, float x, float top, float width, float height, float size)
      throws IOException {
    float letters = size;
    List<String> lines = lines(row, words, words.teeth(row.teeth()), letters, width);
    if (!fit(lines, letters, height)) {
      lines = lines(row, words, row.teeth().text(), letters, width);
    }
    while (!fit(lines, letters, height) && letters > LEAST) {
      letters -= 0.5f;
      lines = lines(row, words, row.teeth().text(), letters, width);
    }
    String left = row.left(words);
    String right = row.right(words);
    boolean together = width(left + "  " + right, letters) <= width;
    float taken = (lines.size() + (together ? 1 : 2)) * letters * LINE;
    float scale = Math.min(width / row.width(), (height - taken) / row.height());
    float high = row.height() * scale;
    byte[] jpeg = Base64.getDecoder().decode(row.thumbnail());
    PDImageXObject picture = JPEGFactory.createFromByteArray(document, jpeg);
    page.drawImage(picture, x, top - high, row.width() * scale, high);
    float at = top - high - letters * LINE;
    text(left, x, at, letters);
    if (!together) {
      at -= letters * LINE;
    }
    float end = Math.max(row.width() * scale, width(left + "  " + right, letters));
    text(right, x + (together ? end : width) - width(right, letters), at, letters);
    for (String line : lines) {
      at -= letters * LINE;
      text(line, x, at, letters);
    }
  }

  /** What stands below a picture, in lines that are no wider than it may be. */
  private List<String> lines(SheetRow row, SheetWords words, String teeth, float size, float width)
      throws IOException {
    List<String> lines = new ArrayList<>();
    String when = words.when(row.when());
    for (String text :
        List.of(
            words.view(row.view()),
            teeth,
            row.who(),
            when.isEmpty() ? row.name() : when + ", " + row.name())) {
      lines.addAll(wrapped(text, size, width));
    }
    return lines;
  }

  /** True if a picture keeps a good part of its place. */
  private static boolean fit(List<String> lines, float size, float height) {
    return (lines.size() + 2) * size * LINE <= height * WORDS_AT_MOST;
  }

  /** The text in lines, parted at spaces; a word that is wider than a line is parted in itself. */
  private List<String> wrapped(String text, float size, float width) throws IOException {
    List<String> lines = new ArrayList<>();
    String line = "";
    for (String word : drawable(text.strip()).split(" +", -1)) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (width(longer, size) <= width) {
        line = longer;
        continue;
      }
      if (!line.isEmpty()) {
        lines.add(line);
      }
      line = word;
      while (width(line, size) > width && line.length() > 1) {
        int kept = fitting(line, size, width);
        lines.add(line.substring(0, kept));
        line = line.substring(kept);
      }
    }
    if (!line.isEmpty()) {
      lines.add(line);
    }
    return lines;
  }

  private int fitting(String word, float size, float width) throws IOException {
    int kept = word.length() - 1;
    while (kept > 1 && width(word.substring(0, kept), size) > width) {
      kept--;
    }
    return kept;
  }

  private void text(String text, float x, float y, float size) throws IOException {
    page.beginText();
    page.setFont(font, size);
    page.newLineAtOffset(x, y);
    page.showText(drawable(text));
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
