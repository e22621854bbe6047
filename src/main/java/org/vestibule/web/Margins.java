package org.vestibule.web;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.vestibule.dental.Direction;
import org.vestibule.dental.Edge;
import org.vestibule.dental.PatientOrientation;
import org.vestibule.words.TradeWords;
import org.vestibule.words.Words;

/** What lies at a picture's margins, as templates need it: from Patient Orientation alone. */
final class Margins {

  private final Words words;
  private final TradeWords trade;

  Margins(Words words, TradeWords trade) {
    this.words = words;
    this.trade = trade;
  }

  /** Word and letter for each of {@code top}, {@code bottom}, {@code left}, {@code right}. */
  Map<String, Object> of(Optional<PatientOrientation> orientation) {
    Map<String, Object> margins = new HashMap<>();
    for (Edge edge : Edge.values()) {
      margins.put(edge.name().toLowerCase(Locale.ROOT), margin(orientation, edge));
    }
    return margins;
  }

  /** A margin of which nothing is known says nothing. */
  private Map<String, Object> margin(Optional<PatientOrientation> orientation, Edge edge) {
    for (Direction direction : Direction.values()) {
      if (orientation.flatMap(shown -> shown.edgeOf(direction)).equals(Optional.of(edge))) {
        boolean side = direction == Direction.LEFT || direction == Direction.RIGHT;
        String letter = side ? words.say("letter-" + direction.letter()) : "";
        return Map.of("word", trade.direction(direction), "letter", letter);
      }
    }
    return Map.of("word", "", "letter", "");
  }
}
