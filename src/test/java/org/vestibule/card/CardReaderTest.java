package org.vestibule.card;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.base.Outcome.Done;
import org.vestibule.card.CardSighting.NoCard;
import org.vestibule.card.CardSighting.OneCard;
import org.vestibule.card.CardSighting.Refused;

/** Cards read from photographs that are drawn with faults; a thousand more are in the long runs. */
final class CardReaderTest {

  private static final int WIDTH = 2016;
  private static final CardPhotos PHOTOS = new CardPhotos(WIDTH);

  @ParameterizedTest
  @CsvSource({"TILTED, 2", "DIM, 2", "CURVED, 2"})
  void neverReadsAnotherCardThanTheOneInThePhotograph(CardFault fault, int count) {
    for (int seed = 1; seed <= count; seed++) {
      CardPhotos.Photo photo = PHOTOS.photo(fault, seed);
      if (CardReader.read(photo.jpeg()).orThrow() instanceof OneCard read) {
        assertThat(photo.cards()).as(photo.seed()).containsExactly(read.card());
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"PLAIN, 2", "ROTATED, 2", "GLOSSY, 2", "OUT_OF_FRAME, 2"})
  void readsTheCard(CardFault fault, int count) {
    for (int seed = 1; seed <= count; seed++) {
      CardPhotos.Photo photo = PHOTOS.photo(fault, seed);

      assertThat(CardReader.read(photo.jpeg()).orThrow())
          .as(photo.seed())
          .isEqualTo(new OneCard(photo.cards().get(0)));
    }
  }

  @Test
  void severalCardsInOnePhotographAreRefused() {
    assertThat(CardReader.read(PHOTOS.photo(CardFault.SEVERAL, 1).jpeg()).orThrow())
        .isInstanceOfSatisfying(
            Refused.class,
            refused -> {
              assertThat(refused.reason()).matches("[234] cards are in one photograph");
              assertThat(refused.advice()).isEqualTo("photograph one card, and nothing else");
            });
  }

  /** Glare over a corner of both codes. */
  @Test
  void aCardThatIsSeenButNotReadIsRefused() {
    assertThat(new CardPhotos(4032).photo(CardFault.GLOSSY, 45).jpeg())
        .satisfies(
            jpeg ->
                assertThat(CardReader.read(jpeg).orThrow())
                    .isEqualTo(
                        new Refused(
                            "a code like a card's is seen but can't be read",
                            "photograph it again, filling half of the frame, without glare and"
                                + " held flat")));
  }

  /** Real photographs, none of them of a card. */
  @Test
  void noRealPhotographIsTakenForACard() throws IOException {
    String folder = System.getenv("VESTIBULE_PHOTOS");
    if (folder == null) {
      System.err.println("SKIPPED: VESTIBULE_PHOTOS names no folder of real photographs");
    }
    Assumptions.assumeTrue(folder != null, "VESTIBULE_PHOTOS names no folder");
    allAreNoCards(Path.of(folder));
  }

  @Test
  void noSamplePhotographIsTakenForACard() throws IOException {
    allAreNoCards(Path.of("samples", "roll"));
  }

  private static void allAreNoCards(Path folder) throws IOException {
    int looked = 0;
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(each -> each.toString().endsWith(".jpg")).toList()) {
        if (CardReader.read(Files.readAllBytes(file)) instanceof Done<CardSighting> seen) {
          looked++;
          assertThat(seen.value()).as(file.getFileName().toString()).isEqualTo(new NoCard());
        }
      }
    }
    assertThat(looked).isPositive();
  }

  @Test
  void aMirroredCardIsRefused() {
    assertThat(CardReader.read(PHOTOS.photo(CardFault.MIRRORED, 1).jpeg()).orThrow())
        .isEqualTo(
            new Refused(
                "the card is mirrored in the photograph",
                "photograph it directly, not in a mirror; if it was, have the phone's front camera"
                    + " store pictures unmirrored, and look at the photographs beside it"));
  }

  @ParameterizedTest
  @CsvSource({"NO_CARD, 4", "FOREIGN, 1"})
  void whatIsNotACardIsNoCard(CardFault fault, int count) {
    for (int seed = 1; seed <= count; seed++) {
      CardPhotos.Photo photo = PHOTOS.photo(fault, seed);

      assertThat(CardReader.read(photo.jpeg()).orThrow()).as(photo.seed()).isEqualTo(new NoCard());
    }
  }
}
