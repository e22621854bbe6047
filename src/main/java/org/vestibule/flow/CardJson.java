package org.vestibule.flow;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.card.Card;
import org.vestibule.card.CardSighting;
import org.vestibule.card.CardSighting.NoCard;
import org.vestibule.card.CardSighting.OneCard;
import org.vestibule.card.CardSighting.Refused;
import org.vestibule.card.ViewCard;
import org.vestibule.card.VisitCard;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Notation;
import org.vestibule.dental.Stage;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.TeethReader;

/** What a look for cards saw in a photograph, as the ledger keeps it. */
final class CardJson {

  static final String KIND = "card";

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final TeethReader TEETH = new TeethReader(Notation.ISO_3950);

  private CardJson() {}

  static String write(CardSighting sighting) {
    ObjectNode json = JSON.createObjectNode();
    if (sighting instanceof Refused refused) {
      json.put("refused", refused.reason()).put("advice", refused.advice());
      json.put("seen", refused.seen());
    } else if (sighting instanceof OneCard one) {
      write(one.card(), json);
    }
    return json.toString();
  }

  private static void write(Card card, ObjectNode json) {
    if (card instanceof VisitCard visit) {
      json.put("visit", visit.token());
    } else if (card instanceof ViewCard view) {
      json.put("view", view.view());
      json.put("teeth", view.teeth() == null ? null : view.teeth().text());
      json.put("mirror", name(view.mirror()));
      json.put("incisors", name(view.incisors()));
      json.put("stage", name(view.stage()));
    }
  }

  private static @Nullable String name(@Nullable Enum<?> value) {
    return value == null ? null : value.name();
  }

  static CardSighting read(String text) {
    JsonNode json;
    try {
      json = JSON.readTree(text);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("what the ledger says of a card is not JSON", e);
    }
    if (json.has("refused")) {
      return new Refused(
          json.path("refused").asText(),
          json.path("advice").asText(),
          json.path("seen").asBoolean(true));
    }
    if (json.has("visit")) {
      return new OneCard(new VisitCard(json.path("visit").asText()));
    }
    return json.has("view") ? new OneCard(viewCard(json)) : new NoCard();
  }

  private static ViewCard viewCard(JsonNode json) {
    return new ViewCard(
        json.path("view").asText(),
        json.path("teeth").isTextual() ? teeth(json.path("teeth").asText()) : null,
        constant(json.path("mirror"), Mirror.class),
        constant(json.path("incisors"), Incisors.class),
        constant(json.path("stage"), Stage.class));
  }

  private static Teeth teeth(String text) {
    Outcome<Teeth> read = text.isEmpty() ? Outcome.done(Teeth.NONE) : TEETH.read(text);
    return read.orThrow();
  }

  private static <E extends Enum<E>> @Nullable E constant(JsonNode node, Class<E> type) {
    return node.isTextual() ? Enum.valueOf(type, node.asText()) : null;
  }
}
