package org.vestibule.flow;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.base.Turn;
import org.vestibule.encode.Codestream;
import org.vestibule.jpeg.Preview;
import org.vestibule.jpeg.Raster;
import org.vestibule.quality.CardColour;
import org.vestibule.quality.GreyCard;
import org.vestibule.quality.QualityAdvice;
import org.vestibule.store.PhotoRef;
import org.vestibule.store.RunLock;
import org.vestibule.store.ledger.Ledger;

/**
 * Judges a filed photograph's colours by the grey card that a person found in it. What was found is
 * kept with the other advice; nothing is changed in the picture.
 */
public final class GreyCards {

  /** Kind of the ledger's facts about where a card was marked, by whom, and what it said. */
  private static final String KIND = "grey card 1";

  private static final ObjectMapper JSON = new ObjectMapper();

  private final Practice practice;
  private final Ledger ledger;

  public GreyCards(Practice practice) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
  }

  /**
   * What a card said.
   *
   * @param sentence how true the colours are
   * @param whatToDo as sentences; empty if they are as they should be
   */
  public record Marked(String sentence, String whatToDo) {}

  /**
   * Marks the card in the picture as it is shown: in the crop if there is one.
   *
   * @param x a spot on the card as a part of the picture's width, 0 to 1
   * @param y the same of its height
   * @return what the card says; refused if nothing there can be judged
   */
  @SuppressWarnings("try") // the lock is held, not used
  public Outcome<Marked> mark(String id, double x, double y, String by) throws IOException {
    Outcome<RunLock> locked = practice.store().lock("grey-card");
    if (!(locked instanceof Done<RunLock> free)) {
      return ((Refused<RunLock>) locked).as();
    }
    try (RunLock lock = free.value()) {
      Outcome<PhotoRef> found = practice.store().ids().find(id);
      if (!(found instanceof Done<PhotoRef> photo)) {
        return ((Refused<PhotoRef>) found).as();
      }
      return markOne(photo.value().hash(), x, y, by);
    }
  }

  private Outcome<Marked> markOne(ContentHash photo, double x, double y, String by)
      throws IOException {
    Outcome<CardColour> judged =
        new Faces(practice)
            .object(photo)
            .then(Codestream::of)
            .then(jpeg -> Preview.of(jpeg, QualityAdvice.PREVIEW_SIDE, Turn.NONE))
            .then(shown -> colour(shown, x, y));
    if (!(judged instanceof Done<CardColour> done)) {
      return ((Refused<CardColour>) judged).as();
    }
    CardColour colour = done.value();
    ledger.together(
        () -> {
          ledger.arrivals().facts(photo, KIND, write(x, y, by, colour.difference()));
          new PictureAdvice(practice).colour(photo, colour.finding());
          return colour;
        });
    practice.audit().looked(photo, by);
    practice.store().followIndex();
    return Outcome.done(said(colour));
  }

  private Marked said(CardColour colour) {
    return colour
        .finding()
        .map(found -> new Marked(found.sentence(), found.whatToDo()))
        .orElseGet(
            () ->
                new Marked(
                    String.format(
                        Locale.ROOT,
                        "The grey card is %.1f (CIEDE2000) from grey, not more than %.1f: no colour"
                            + " cast.",
                        colour.difference(),
                        practice.settings().quality().castDifference()),
                    ""));
  }

  private Outcome<CardColour> colour(Raster shown, double x, double y) {
    return QualityAdvice.colour(shown, GreyCard.spot(x, y), practice.settings().quality());
  }

  private String write(double x, double y, String by, double difference) {
    return JSON.createObjectNode()
        .put("x", x)
        .put("y", y)
        .put("by", by)
        .put("at", practice.clock().instant().toString())
        .put("difference", difference)
        .toString();
  }

  /** The latest mark as a step of the photograph's history. */
  static List<PhotoHistory.Step> steps(ContentHash photo, Ledger ledger) {
    return ledger.arrivals().facts(photo, KIND).map(GreyCards::step).stream().toList();
  }

  private static PhotoHistory.Step step(String text) {
    try {
      JsonNode json = JSON.readTree(text);
      return new PhotoHistory.Step(
          Instant.parse(json.path("at").asText()),
          json.path("by").asText(),
          String.format(
              Locale.ROOT,
              "marked the grey card: %.1f (CIEDE2000) from grey",
              json.path("difference").asDouble()),
          List.of());
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("what the ledger says of a grey card is not JSON", e);
    }
  }
}
