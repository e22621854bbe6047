package org.vestibule.card;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Notation;
import org.vestibule.dental.Stage;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.words.Language;
import org.vestibule.words.TradeWords;
import org.vestibule.words.Words;

/** Cards in every language: nothing is cut, and nothing of another language is on them. */
class GermanCardsTest {

  private static String text(CardSheet sheet) throws IOException {
    try (PDDocument document = Loader.loadPDF(sheet.pdf())) {
      PDFTextStripper stripper = new PDFTextStripper();
      return stripper.getText(document).replaceAll("\\s+", " ");
    }
  }

  private static CardSheet views(Language language, Mirror mirror, Incisors edge, Stage stage) {
    List<ViewCard> cards = new ArrayList<>();
    for (View view : ViewCatalogue.standard().all()) {
      cards.add(
          new ViewCard(
              view.key(),
              new TeethReader(Notation.ISO_3950).read("18, 16, 14, 12, 22, 24, 26, 28").orThrow(),
              mirror,
              edge,
              stage));
    }
    return CardSheets.views(cards, ViewCatalogue.standard(), language).orThrow();
  }

  @ParameterizedTest
  @EnumSource(Language.class)
  void everyViewsNameStandsThereUncut(Language language) throws IOException {
    String text = text(views(language, Mirror.CORRECTED, Incisors.BOTTOM, Stage.DURING));
    TradeWords trade = new TradeWords(Words.trade(language), ViewCatalogue.standard());
    for (View view : ViewCatalogue.standard().all()) {
      assertThat(text).contains(trade.view(view));
    }
    assertThat(text).doesNotContain("...", CardFont.BOX).contains("FDI 18, 16, 14, 12, 22, 24");
  }

  @ParameterizedTest
  @EnumSource(Mirror.class)
  void aGermanCardSaysNothingInEnglish(Mirror mirror) throws IOException {
    List<VisitFace> visits = List.of(new VisitFace("7K3M0QWX9Z", "09:30", "V-1", ""));
    for (Incisors edge : Incisors.values()) {
      String text =
          text(views(Language.GERMAN, mirror, edge, Stage.FOLLOW_UP))
              + text(CardSheets.visits(visits, Language.GERMAN).orThrow());
      Words english = Words.read(CardSheets.class, "words/cards", Language.ENGLISH);
      for (String said : english.all().values()) {
        assertThat(text).doesNotContain(said.replace("{0}", "").strip());
      }
      assertThat(text)
          .doesNotContain("mirror", "teeth", "upper", "stage", "Visit")
          .contains("Stadium: Kontrolle", "Termin V-1", "Schneidezähne");
    }
  }

  /** What the code says is no language's: read off the printed sheets, the same text in all. */
  @ParameterizedTest
  @EnumSource(Stage.class)
  void theCodeIsTheSameInEveryLanguage(Stage stage) throws Exception {
    ViewCard card = new ViewCard("upper-occlusal", null, Mirror.AS_SHOT, Incisors.TOP, stage);
    Set<String> codes = new TreeSet<>();
    Set<String> texts = new TreeSet<>();
    for (Language language : Language.values()) {
      CardSheet sheet =
          CardSheets.views(List.of(card), ViewCatalogue.standard(), language).orThrow();
      codes.add(code(sheet));
      texts.add(text(sheet));
    }
    assertThat(codes).containsExactly(CardText.of(card).orThrow());
    assertThat(texts).as("the sheets are in different languages").hasSize(2);
  }

  /** By a reader of another make than ours, off the first card of the sheet. */
  private static String code(CardSheet sheet) throws Exception {
    try (PDDocument document = Loader.loadPDF(sheet.pdf())) {
      BufferedImage page = new PDFRenderer(document).renderImageWithDPI(0, 150, ImageType.RGB);
      int width = page.getWidth() / 2;
      int height = page.getHeight() / 2;
      int[] pixels = page.getRGB(0, 0, width, height, null, 0, width);
      return new QRCodeReader()
          .decode(
              new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(width, height, pixels))),
              Map.of(DecodeHintType.TRY_HARDER, true))
          .getText();
    }
  }
}
