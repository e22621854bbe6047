package org.vestibule.release;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.vestibule.base.Turn;
import org.vestibule.check.SamplePhotograph;
import org.vestibule.dental.Notation;
import org.vestibule.dental.PatientOrientation;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.jpeg.Preview;
import org.vestibule.words.Language;
import org.vestibule.words.TradeWords;
import org.vestibule.words.Words;

/** The sheet in every language: all of it there, none of it over something else. */
class SheetLanguageTest {

  private static final List<String> TEETH = List.of("16", "13-23, 36", "18, 16, 14, 12, 22, 24");

  private static Sheet sheet(Language language, int from, int pictures) {
    var small = Preview.of(SamplePhotograph.jpeg(), 96, Turn.NONE).orThrow();
    String thumbnail = Base64.getEncoder().encodeToString(SmallJpeg.of(small));
    List<View> views = ViewCatalogue.standard().all();
    List<SheetRow> rows = new ArrayList<>();
    for (int i = 0; i < pictures; i++) {
      Teeth teeth = new TeethReader(Notation.ISO_3950).read(TEETH.get(i % TEETH.size())).orThrow();
      rows.add(
          new SheetRow(
              "copy-" + (i + 1),
              "Maximiliane Mustermann-Beispielhuber, P-0" + i,
              i % 3 == 0 ? "2026-03-12" : i % 3 == 1 ? "day 5" : "",
              views.get((from + i) % views.size()).name(),
              teeth,
              i == 0 ? null : PatientOrientation.parse("L\\F").orElseThrow().edges(),
              thumbnail,
              small.width(),
              small.height()));
    }
    SheetWords words = new SheetWords(language);
    return new Sheet(
        words.say("title", words.purpose(Purposes.find("own-copy").orThrow())),
        List.of(words.say("release", "2026-001"), words.say("about-named")),
        rows,
        words);
  }

  /** The letters of a page where they stand. */
  private static final class Letters extends PDFTextStripper {
    private final List<TextPosition> all = new ArrayList<>();

    @Override
    protected void processTextPosition(TextPosition position) {
      all.add(position);
      super.processTextPosition(position);
    }
  }

  @ParameterizedTest
  @EnumSource(Language.class)
  void noLetterStandsOverAnotherOrOffThePage(Language language) throws IOException {
    for (int pictures : new int[] {1, 2, 6, 13, 42}) {
      byte[] pdf = PdfSheet.of(sheet(language, pictures, pictures), 1);
      Letters letters = new Letters();
      try (PDDocument document = Loader.loadPDF(pdf)) {
        letters.getText(document);
      }
      List<TextPosition> all =
          letters.all.stream().filter(one -> !one.getUnicode().isBlank()).toList();
      for (int first = 0; first < all.size(); first++) {
        TextPosition one = all.get(first);
        assertThat(one.getXDirAdj()).isGreaterThan(30);
        assertThat(one.getXDirAdj() + one.getWidthDirAdj()).isLessThan(595 - 30);
        assertThat(one.getYDirAdj()).isBetween(30f, 842f - 20);
        for (int second = first + 1; second < all.size(); second++) {
          TextPosition other = all.get(second);
          boolean sameLine =
              Math.abs(one.getYDirAdj() - other.getYDirAdj()) < one.getFontSizeInPt() * 0.9;
          boolean over =
              one.getXDirAdj() < other.getXDirAdj() + other.getWidthDirAdj() - 0.3
                  && other.getXDirAdj() < one.getXDirAdj() + one.getWidthDirAdj() - 0.3;
          if (sameLine && over) {
            fail(one + " over " + other + ", " + pictures + " pictures");
          }
        }
      }
    }
  }

  @ParameterizedTest
  @EnumSource(Language.class)
  void everyViewStandsThereWhole(Language language) throws IOException {
    TradeWords trade = new TradeWords(Words.trade(language), ViewCatalogue.standard());
    List<View> views = ViewCatalogue.standard().all();
    StringBuilder text = new StringBuilder();
    for (int from = 0; from < views.size(); from++) {
      if (from % 9 == 0) {
        try (PDDocument document = Loader.loadPDF(PdfSheet.of(sheet(language, from, 9), 1))) {
          Letters letters = new Letters();
          letters.getText(document);
          StringBuilder drawn = new StringBuilder();
          letters.all.forEach(one -> drawn.append(one.getUnicode()));
          text.append(drawn.toString().replaceAll("\\s", ""));
        }
      }
    }
    for (View view : views) {
      assertThat(text.toString()).contains(trade.view(view).replace(" ", ""));
    }
  }

  @Test
  void aGermanSheetSaysNothingInEnglish() throws IOException {
    Sheet sheet = sheet(Language.GERMAN, 0, 42);
    String text;
    try (PDDocument document = Loader.loadPDF(PdfSheet.of(sheet, 1))) {
      text = new PDFTextStripper().getText(document);
    }
    String page = new String(HtmlSheet.of(sheet, Set.of(Format.JPEG)), StandardCharsets.UTF_8);
    String read = page.replaceAll("(?s)<style>.*?</style>|<[^>]*>", " ") + text;
    Words english =
        Words.trade(Language.ENGLISH).and(Words.read(Sheet.class, "words/sheet", Language.ENGLISH));
    Words german =
        Words.trade(Language.GERMAN).and(Words.read(Sheet.class, "words/sheet", Language.GERMAN));
    english
        .all()
        .forEach(
            (key, said) -> {
              if (said.length() > 3 && !said.contains("{") && !german.all().containsValue(said)) {
                assertThat(read).as(key).doesNotContainPattern("\\b" + Pattern.quote(said) + "\\b");
              }
            });
    assertThat(page)
        .startsWith("<!doctype html>\n<html lang=\"de\">")
        .contains("Alle Aufnahmen (42)", "12.03.2026", "Tag 5", "erster Molar oben rechts (16)")
        .contains("Zähne)", "← rechts am Patienten");
    assertThat(text)
        .contains(
            "Aufnahmen: Eigene Kopie der Patientin oder des Patienten", "12.03.2026", "ä", "ü");
  }
}
