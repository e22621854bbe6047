package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.assign.IssuedCard;
import org.vestibule.flow.CardBook;
import org.vestibule.flow.Practice;
import org.vestibule.flow.TestHome;

/** Cards from the command line. */
class CardsCommandTest {

  private static final String ADA = "Ada Example";

  @TempDir Path folder;

  private TestHome home;

  @BeforeEach
  void layOut() throws IOException {
    home = TestHome.in(folder);
  }

  @Test
  void aDaysVisitsGetCardsWithoutNames() throws IOException {
    Asked asked = visits("cards.pdf");

    assertThat(asked.err()).isEmpty();
    assertThat(asked.out()).isEqualTo("Wrote 2 cards to cards.pdf.\n");
    assertThat(asked.code()).isZero();
    assertThat(text("cards.pdf"))
        .contains("09:00", "Visit V1", "11:00", "Visit V2")
        .doesNotContain("Tallgrass", "Orla", "P1");
  }

  @Test
  void cardsSpeakThePracticesLanguageOrTheOneThatIsAskedFor() throws IOException {
    visits("asked.pdf", "--language", "de");
    assertThat(text("asked.pdf")).contains("Termin V1", "Diese Karte").doesNotContain("Visit");

    Path settings = folder.resolve("vestibule.toml");
    String before = Files.exists(settings) ? Files.readString(settings) : "[practice]\n";
    Files.writeString(
        settings, before.replaceFirst("\\[practice\\]", "[practice]\nlanguage = \"de\""));
    visits("set.pdf");
    visits("english.pdf", "--language", "en");
    assertThat(text("set.pdf")).contains("Termin V1");
    assertThat(text("english.pdf")).contains("Visit V1");

    Asked unknown = visits("none.pdf", "--language", "xx");
    assertThat(unknown.code()).isEqualTo(3);
    assertThat(unknown.err())
        .isEqualTo(
            """
            vestibule: there are no words in the language "xx".
              What to do: say en or de.
            """);
    assertThat(folder.resolve("none.pdf")).doesNotExist();
  }

  @Test
  void namesArePrintedAsFarAsTheyAreWanted() throws IOException {
    visits("initials.pdf", "--names", "initials");
    visits("full.pdf", "--names", "full");

    assertThat(text("initials.pdf")).contains("O. T.", "N. B.").doesNotContain("Tallgrass");
    assertThat(text("full.pdf")).contains("Orla Tallgrass", "Ned Brightwater");
  }

  @Test
  void theSameVisitKeepsItsTokenAndIsFoundByIt() throws IOException {
    visits("first.pdf");
    List<IssuedCard> first = issued();
    visits("second.pdf");

    assertThat(issued()).isEqualTo(first).hasSize(2);
    assertThat(Files.readAllBytes(folder.resolve("second.pdf")))
        .isEqualTo(Files.readAllBytes(folder.resolve("first.pdf")));
    try (Practice practice = home.open()) {
      IssuedCard card = new CardBook(practice).of(first.get(0).token()).orElseThrow();
      assertThat(card.visit()).isEqualTo("V1");
      assertThat(card.patientId()).isEqualTo("P1");
      assertThat(card.day()).isEqualTo(LocalDate.of(2026, 3, 12));
      assertThat(new CardBook(practice).of("0000000000")).isEmpty();
    }
  }

  @Test
  void aDayWithoutVisitsIsRefused() {
    Asked asked = Asked.by(ADA, home, "cards", "visits", "--day", "2026-03-13", "--out", "a.pdf");

    assertThat(asked.code()).isEqualTo(3);
    assertThat(asked.err())
        .isEqualTo(
            """
            vestibule: the visit list has no visit on 2026-03-13.
              What to do: check the day, or add the visits to the list.
            """);
    assertThat(folder.resolve("a.pdf")).doesNotExist();
  }

  @Test
  void nothingIsOverwritten() throws IOException {
    Files.writeString(folder.resolve("mine.pdf"), "mine");

    Asked asked = visits("mine.pdf");

    assertThat(asked.code()).isEqualTo(3);
    assertThat(asked.err())
        .isEqualTo(
            """
            vestibule: mine.pdf is already there.
              What to do: name another file with --out; nothing was overwritten.
            """);
    assertThat(Files.readString(folder.resolve("mine.pdf"))).isEqualTo("mine");
  }

  @Test
  void whatCantBePrintedIsSaid() throws IOException {
    Files.writeString(
        folder.resolve("visits.csv"),
        """
        visit,patient id,name,birth date,sex,start,end
        V1,P1,"\u5C71\u7530, \u82B1\u5B50",1990-01-02,F,2026-03-12 09:00,2026-03-12 10:00
        """);

    Asked asked = visits("cards.pdf", "--names", "full");

    assertThat(asked.code()).isEqualTo(1);
    assertThat(asked.err())
        .isEqualTo(
            "vestibule: the card of visit V1 shows boxes in place of letters that the font lacks:"
                + " hand it out by time and visit.\n");
  }

  @Test
  void viewsGetCardsInWords() throws IOException {
    Asked asked =
        Asked.of(
            home,
            "cards",
            "views",
            "upper occlusal",
            "frontal",
            "--mirror",
            "as shot",
            "--incisors",
            "top",
            "--teeth",
            "13-23",
            "--stage",
            "before",
            "--out",
            "views.pdf");

    assertThat(asked.err()).isEmpty();
    assertThat(asked.out()).isEqualTo("Wrote 2 cards to views.pdf.\n");
    assertThat(asked.code()).isZero();
    assertThat(text("views.pdf"))
        .contains(
            "Upper occlusal",
            "Upper right canine to upper left canine (13-23, 6 teeth)",
            "In a mirror, not flipped. Stage: before",
            "Incisors at the top of the stored picture");
    assertThat(folder.resolve("ledger.sqlite")).doesNotExist();
  }

  @Test
  void aViewThatIsNotKnownIsRefused() {
    Asked asked = Asked.of(home, "cards", "views", "occlusal", "--out", "views.pdf");

    assertThat(asked.code()).isEqualTo(3);
    assertThat(asked.err()).startsWith("vestibule: \"occlusal\" could mean several views.\n");
    assertThat(folder.resolve("views.pdf")).doesNotExist();
  }

  private Asked visits(String out, String... more) {
    String[] all = new String[6 + more.length];
    List<String> first = List.of("cards", "visits", "--day", "2026-03-12", "--out", out);
    for (int i = 0; i < all.length; i++) {
      all[i] = i < 6 ? first.get(i) : more[i - 6];
    }
    return Asked.by(ADA, home, all);
  }

  private List<IssuedCard> issued() throws IOException {
    try (Practice practice = home.open()) {
      CardBook book = new CardBook(practice);
      return java.util.stream.Stream.of("V1", "V2")
          .flatMap(visit -> practice.store().ledger().visitCards().of(visit).stream())
          .map(row -> book.of(row.token()).orElseThrow())
          .toList();
    }
  }

  private String text(String file) throws IOException {
    try (PDDocument document = Loader.loadPDF(folder.resolve(file).toFile())) {
      return new PDFTextStripper().getText(document);
    }
  }
}
