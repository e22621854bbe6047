package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.vestibule.base.ContentHash;
import org.vestibule.card.CardSighting;
import org.vestibule.card.VisitCard;
import org.vestibule.intake.Arrival;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.LeftOut;
import org.vestibule.intake.LeftOutKind;
import org.vestibule.intake.Photo;
import org.vestibule.intake.Roll;
import org.vestibule.jpeg.JpegStructure;

/** A roll and what earlier runs saw make one order. */
class RollCardsTest {

  private static final CaptureFacts FACTS = CaptureFacts.builder().model("P1").build();
  private static final CardSighting NO_CARD = new CardSighting.NoCard();
  private static final CardSighting CARD = new CardSighting.OneCard(new VisitCard("t-VA"));

  @Test
  void everythingThatMayHaveAPlace() {
    Roll roll =
        new Roll(
            List.of(photo("b/IMG_0001.JPG"), photo("b/IMG_0002.JPG")),
            List.of(
                left("a/IMG_0001.JPG", LeftOutKind.DUPLICATE, hash("b/IMG_0001.JPG")),
                left("b/IMG_0003.HEIC", LeftOutKind.HEIC, hash("heic")),
                left("b/IMG_0003.MOV", LeftOutKind.VIDEO, null),
                left("b/IMG_0004.MOV", LeftOutKind.VIDEO, null),
                left("b/list.csv", LeftOutKind.LIST, null)));
    List<Seen> earlier =
        List.of(
            new Seen("b/IMG_0002.JPG", hash("b/IMG_0002.JPG"), FACTS, CARD, "VB"),
            new Seen("b/IMG_9999.JPG", hash("yesterday"), FACTS, CARD, "VA"));

    RollCards cards =
        RollCards.of(
            roll,
            photo -> photo.arrival().name().endsWith("1.JPG") ? CARD : NO_CARD,
            earlier,
            List.of(),
            SortingRules.STRICT);

    CardSighting unread = new CardSighting.Refused("left out", "do this");
    assertThat(cards.seen())
        .containsExactlyInAnyOrder(
            new Seen("b/IMG_0001.JPG", hash("b/IMG_0001.JPG"), FACTS, CARD, ""),
            new Seen("a/IMG_0001.JPG", hash("b/IMG_0001.JPG"), FACTS, CARD, ""),
            new Seen("b/IMG_0002.JPG", hash("b/IMG_0002.JPG"), FACTS, NO_CARD, "VB"),
            new Seen("b/IMG_9999.JPG", hash("yesterday"), FACTS, CARD, "VA"),
            new Seen("b/IMG_0003.HEIC", hash("heic"), CaptureFacts.NONE, unread, ""));
    assertThat(cards.otherFiles()).containsExactly("b/IMG_0004.MOV");
  }

  private static Photo photo(String name) {
    return new Photo(
        new Arrival(Path.of("roll", name), name, 10, Instant.EPOCH, hash(name)),
        FACTS,
        JpegStructure.read(Practice.picture()).orThrow(),
        List.of(),
        List.of());
  }

  private static LeftOut left(
      String name, LeftOutKind kind, @org.jspecify.annotations.Nullable ContentHash hash) {
    return new LeftOut(name, kind, "left out", "do this", hash);
  }

  private static ContentHash hash(String name) {
    return ContentHash.of(name.getBytes(StandardCharsets.UTF_8));
  }
}
