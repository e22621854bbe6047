package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.card.CardPicture;
import org.vestibule.card.CardSheets;
import org.vestibule.card.VisitFace;
import org.vestibule.samples.Scene;
import org.vestibule.store.ledger.VisitCardRow;
import org.vestibule.words.Language;

/**
 * A roll as the phone writes it, sorted by the visit card photographed before and after: the rows
 * say what the pictures show, and nobody says whose they are.
 */
class CardsInTheRollTest {

  private static final String TOKEN = "7Q2MZ4K8RT";
  private static final LocalDate DAY = LocalDate.of(2026, 3, 12);

  @TempDir private Path folder;

  private TestHome home;

  @BeforeEach
  void aCardIsDrawn() throws IOException {
    home = TestHome.in(folder);
    try (Practice practice = home.open()) {
      practice
          .store()
          .ledger()
          .visitCards()
          .add(new VisitCardRow(TOKEN, "V1", "", "P1", DAY), "Ada");
    }
    home.manifest(
        """
        file,view,mirror
        IMG_0002.JPG,frontal,none
        IMG_0003.JPG,right buccal,none
        """);
  }

  private byte[] card(String token, int minute) throws IOException {
    BufferedImage picture =
        CardPicture.of(
            CardSheets.visits(
                    List.of(new VisitFace(token, "09:00", "V1", "O. T.")), Language.ENGLISH)
                .orThrow());
    return TestHome.photo(picture, minute).orientation(1).bytes();
  }

  private void putPhotographs() throws IOException {
    home.put("IMG_0002.JPG", Scene.FRONTAL, 2);
    home.put("IMG_0003.JPG", Scene.RIGHT_BUCCAL, 3);
  }

  @Test
  void theSameCardBeforeAndAfterFilesWhatLiesBetween() throws IOException {
    String card = home.put("IMG_0001.JPG", card(TOKEN, 1));
    putPhotographs();
    home.put("IMG_0004.JPG", card(TOKEN, 4));
    IngestReport report = home.ingest();
    assertThat(report.waiting()).isEmpty();
    assertThat(report.filed())
        .extracting(FiledPhoto::name, FiledPhoto::visit)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple("IMG_0002.JPG", "V1 of 2026-03-12"),
            org.assertj.core.groups.Tuple.tuple("IMG_0003.JPG", "V1 of 2026-03-12"));
    assertThat(report.cards())
        .extracting(Aside::name)
        .containsExactly("IMG_0001.JPG", "IMG_0004.JPG");
    try (Practice practice = home.open()) {
      assertThat(practice.store().ledger().kept().all()).hasSize(2);
      assertThat(new WaitingPhotos(practice).all()).isEmpty();
      assertThat(Verify.run(practice)).as("a card is no gap").isEmpty();
      assertThat(
              ((Refused<?>)
                      new Corrections(practice)
                          .file(card, ByPerson.says("Ada", "visit", "V1", "view", "frontal")))
                  .sentence())
          .isEqualTo(
              "a card is in this photograph, and cards are never filed: if it shows more than the"
                  + " card, file it with a crop that leaves the card out");
    }
    assertThat(home.ingest().cards()).hasSize(2);
  }

  @Test
  void withoutTheClosingCardTheyWait() throws IOException {
    home.put("IMG_0001.JPG", card(TOKEN, 1));
    putPhotographs();
    IngestReport report = home.ingest();
    assertThat(report.filed()).isEmpty();
    assertThat(report.waiting())
        .extracting(WaitingPhoto::name)
        .containsExactly("IMG_0002.JPG", "IMG_0003.JPG");
    assertThat(report.waiting().get(0).proposal()).containsEntry("visit", "V1");
  }

  /** The roll arrives in two nights, and the first night's card is gone from the inbox by then. */
  @Test
  void aCardSeenByAnEarlierRunStillCounts() throws IOException {
    home.put("IMG_0001.JPG", card(TOKEN, 1));
    putPhotographs();
    assertThat(home.ingest().filed()).isEmpty();
    Files.delete(home.inbox().resolve("IMG_0001.JPG"));
    home.put("IMG_0004.JPG", card(TOKEN, 4));
    assertThat(home.ingest().filed())
        .extracting(FiledPhoto::visit)
        .containsExactly("V1 of 2026-03-12", "V1 of 2026-03-12");
  }

  /** A card that nobody drew says nothing. */
  @Test
  void aCardOfAnotherPracticeLetsThemWait() throws IOException {
    home.put("IMG_0001.JPG", card("0000000000", 1));
    putPhotographs();
    home.put("IMG_0004.JPG", card("0000000000", 4));
    IngestReport report = home.ingest();
    assertThat(report.filed()).isEmpty();
    assertThat(report.waiting()).hasSize(2);
    assertThat(report.cards()).hasSize(2);
  }

  @Test
  void aDryRunWritesNothingOfIt() throws IOException {
    home.put("IMG_0001.JPG", card(TOKEN, 1));
    putPhotographs();
    home.put("IMG_0004.JPG", card(TOKEN, 4));
    try (Practice practice = home.open()) {
      IngestRequest request = home.request();
      IngestReport report =
          Ingest.run(
                  practice,
                  new IngestRequest(
                      request.folder(), request.manifest(), request.by(), true, false),
                  Progress.NONE)
              .orThrow();
      assertThat(report.filed()).hasSize(2);
      assertThat(report.cards()).hasSize(2);
      assertThat(practice.store().ledger().photos().startingWith("")).isEmpty();
    }
  }
}
