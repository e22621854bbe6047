package org.vestibule.flow;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.Optional;
import org.vestibule.dental.LowerArchShown;
import org.vestibule.encode.Recipe;

/**
 * What an object's bytes follow from besides photograph and decision. It is fixed with the intent
 * and part of the object's identity, so that settings changed between a killed run and the next one
 * can't give one identity two contents.
 *
 * @param version of the recipe
 * @param institution the practice's name; empty if none
 * @param zone where the practice's clocks are
 * @param lowerArch how the lower arch is shown
 */
record Making(String version, String institution, ZoneId zone, LowerArchShown lowerArch) {

  private static final ObjectMapper JSON = new ObjectMapper();

  /** As the settings and this program have it now. */
  static Making now(Settings settings) {
    return new Making(
        Recipe.VERSION, settings.practiceName(), settings.zone(), settings.lowerArch());
  }

  /** As an intent keeps it. */
  String text() {
    return JSON.createObjectNode()
        .put("version", version)
        .put("institution", institution)
        .put("zone", zone.getId())
        .put("lowerArch", lowerArch.name())
        .toString();
  }

  /** What an intent keeps; empty if this program makes objects otherwise and can't repeat it. */
  static Optional<Making> repeatable(String text) {
    try {
      JsonNode kept = JSON.readTree(text);
      if (!kept.path("version").asText().equals(Recipe.VERSION) || !kept.isObject()) {
        return Optional.empty();
      }
      return Optional.of(
          new Making(
              Recipe.VERSION,
              kept.path("institution").asText(),
              ZoneId.of(kept.path("zone").asText()),
              LowerArchShown.valueOf(kept.path("lowerArch").asText())));
    } catch (JsonProcessingException | DateTimeException | IllegalArgumentException unknown) {
      return Optional.empty();
    }
  }
}
