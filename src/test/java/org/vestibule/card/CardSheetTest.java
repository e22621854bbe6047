package org.vestibule.card;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.base.Outcome;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Notation;
import org.vestibule.dental.Stage;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.words.Language;

/** Drawn sheets, rendered by poppler and read by zbar: neither shares code with us. */
final class CardSheetTest {

  private static final List<VisitFace> VISITS =
      List.of(
          new VisitFace("7K3M0QWX9Z", "09:30", "V-1", "Ana Example"),
          new VisitFace("0123456789", "10:15", "V-2", ""),
          new VisitFace(
              "ABCDEFGHJK", "11:00", "V-3", "\u017B\u00F3\u0142\u0107 \u0418\u0432\u0430\u043D"),
          new VisitFace("MNPQRSTVWX", "11:45", "V-4", "O'Brien-\u00D1u\u00F1ez"),
          new VisitFace("ZZZZZZZZZZ", "12:30", "V-5", "\u5C71\u7530 \u05D0\u05D1 \u0007"));

  @TempDir Path folder;

  @Test
  void anIndependentReaderFindsEachVisitsTextTwice() throws IOException, InterruptedException {
    CardSheet sheet = CardSheets.visits(VISITS, Language.ENGLISH).orThrow();
    List<String> expected = new ArrayList<>();
    for (VisitFace visit : VISITS) {
      String text = CardText.of(new VisitCard(visit.token())).orThrow();
      expected.addAll(List.of(text, text));
    }

    assertThat(texts(sheet)).containsExactlyInAnyOrderElementsOf(expected);
  }

  @Test
  void anIndependentReaderFindsEachViewsText() throws IOException, InterruptedException {
    List<ViewCard> cards = new ArrayList<>();
    ViewCatalogue.standard()
        .all()
        .forEach(
            view ->
                cards.add(
                    new ViewCard(
                        view.key(),
                        new TeethReader(Notation.ISO_3950).read("13-23, 36").orThrow(),
                        Mirror.AS_SHOT,
                        Incisors.LEFT,
                        Stage.FOLLOW_UP)));
    CardSheet sheet = CardSheets.views(cards, ViewCatalogue.standard(), Language.ENGLISH).orThrow();

    TreeSet<String> expected = new TreeSet<>();
    cards.forEach(card -> expected.add(CardText.of(card).orThrow()));
    assertThat(new TreeSet<>(texts(sheet))).isEqualTo(expected);
  }

  @Test
  void whatTheFontLacksIsABoxAndAWarningWithoutTheName() {
    assertThat(CardSheets.visits(VISITS, Language.ENGLISH).orThrow().warnings())
        .containsExactly(
            "the card of visit V-5 shows boxes in place of letters that the font lacks: hand it"
                + " out by time and visit");
  }

  @Test
  void theSameCardsAreTheSameBytes() {
    assertThat(CardSheets.visits(VISITS, Language.ENGLISH).orThrow().pdf())
        .isEqualTo(CardSheets.visits(VISITS, Language.ENGLISH).orThrow().pdf());
  }

  @Test
  void nothingToDrawIsRefused() {
    assertThat(CardSheets.visits(List.of(), Language.ENGLISH))
        .isEqualTo(
            Outcome.refused("there is no visit to draw a card for", "name a day with visits"));
    assertThat(CardSheets.views(List.of(), ViewCatalogue.standard(), Language.ENGLISH))
        .isEqualTo(
            Outcome.refused("there is no view to draw a card for", "name at least one view"));
    assertThat(
            CardSheets.views(
                List.of(new ViewCard("unheard-of", null, null, null, null)),
                ViewCatalogue.standard(),
                Language.ENGLISH))
        .isEqualTo(
            Outcome.refused(
                "the catalogue has no view unheard-of", "name a view of the catalogue"));
  }

  private List<String> texts(CardSheet sheet) throws IOException, InterruptedException {
    ExternalTool renderer = ExternalTool.require("pdftoppm", "poppler-utils");
    ExternalTool reader = ExternalTool.require("zbarimg", "zbar-tools");
    Path pdf = folder.resolve("sheet.pdf");
    Files.write(pdf, sheet.pdf());
    assertThat(
            renderer
                .run("-r", "100", "-gray", pdf.toString(), folder.resolve("page").toString())
                .exitCode())
        .isZero();
    List<String> texts = new ArrayList<>();
    List<Path> pages;
    try (var files = Files.list(folder)) {
      pages = files.filter(file -> file.toString().endsWith(".pgm")).sorted().toList();
    }
    for (Path page : pages) {
      texts.addAll(reader.run("--quiet", "--raw", page.toString()).text().lines().toList());
      Files.delete(page);
    }
    return texts;
  }
}
