package org.vestibule.card;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.card.CardSighting.NoCard;
import org.vestibule.card.CardSighting.OneCard;
import org.vestibule.card.CardSighting.Refused;

/** Cards read from photographs that are drawn with faults; a thousand more are in the long runs. */
final class CardReaderTest {

  private static final int WIDTH = 2016;
  private static final CardPhotos PHOTOS = new CardPhotos(WIDTH);

  @ParameterizedTest
  @CsvSource({
    "PLAIN, 3",
    "TILTED, 3",
    "ROTATED, 3",
    "DIM, 3",
    "GLOSSY, 3",
    "CURVED, 3",
    "OUT_OF_FRAME, 3"
  })
  void neverReadsAnotherCardThanTheOneInThePhotograph(CardFault fault, int count) {
    for (int seed = 1; seed <= count; seed++) {
      CardPhotos.Photo photo = PHOTOS.photo(fault, seed);
      if (CardReader.read(photo.jpeg()).orThrow() instanceof OneCard read) {
        assertThat(photo.cards()).as(photo.seed()).containsExactly(read.card());
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"PLAIN, 3", "ROTATED, 3", "GLOSSY, 2", "OUT_OF_FRAME, 2"})
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
  @CsvSource({"NO_CARD, 6", "FOREIGN, 2"})
  void whatIsNotACardIsNoCard(CardFault fault, int count) {
    for (int seed = 1; seed <= count; seed++) {
      CardPhotos.Photo photo = PHOTOS.photo(fault, seed);

      assertThat(CardReader.read(photo.jpeg()).orThrow()).as(photo.seed()).isEqualTo(new NoCard());
    }
  }
}
