package org.vestibule.flow;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.vestibule.dental.LowerArchShown;
import org.vestibule.encode.Recipe;
import org.vestibule.flow.DoorRules.Identity;
import org.vestibule.store.ledger.Intent;

/**
 * What an object's bytes follow from besides photograph and decision. It is fixed with the intent
 * and part of the object's identity, so that settings changed between a killed run and the next one
 * can't give one identity two contents.
 *
 * @param version of the recipe
 * @param institution the practice's name; empty if none
 * @param zone where the practice's clocks are
 * @param lowerArch how the lower arch is shown
 * @param identity what the object says of the patient's identity
 */
record Making(
    String version, String institution, ZoneId zone, LowerArchShown lowerArch, Identity identity) {

  private static final ObjectMapper JSON = new ObjectMapper();

  /** As the settings and this program have it now. */
  static Making now(Settings settings) {
    return of(settings, settings.door().identity());
  }

  /**
   * The same for a photograph of which there were intents before. Once begun without the patient's
   * identity, it stays so: a line that is missing in the settings must not undo it.
   */
  static Making now(Settings settings, List<Intent> before) {
    Identity now = settings.door().identity();
    if (now == Identity.KEPT) {
      for (Intent intent : before) {
        Identity then = identity(intent);
        now = then == Identity.KEPT ? now : then;
      }
    }
    return of(settings, now);
  }

  private static Making of(Settings settings, Identity identity) {
    return new Making(
        version(identity),
        settings.practiceName(),
        settings.zone(),
        settings.lowerArch(),
        identity);
  }

  /**
   * Objects without identity have a version of their own, which programs that know nothing of them
   * can't repeat.
   */
  private static String version(Identity identity) {
    return Recipe.VERSION + (identity == Identity.KEPT ? "" : " without identity");
  }

  boolean hasIdentity() {
    return identity == Identity.KEPT;
  }

  /** As an intent keeps it. */
  String text() {
    ObjectNode text =
        JSON.createObjectNode()
            .put("version", version)
            .put("institution", institution)
            .put("zone", zone.getId())
            .put("lowerArch", lowerArch.name());
    if (!hasIdentity()) {
      text.put("identity", identity.name());
    }
    return text.toString();
  }

  /** What an object says of the patient's identity, whatever program made it. */
  static Identity identity(Intent intent) {
    try {
      return identity(JSON.readTree(intent.recipe()));
    } catch (JsonProcessingException | IllegalArgumentException unknown) {
      return Identity.KEPT;
    }
  }

  private static Identity identity(JsonNode kept) {
    return Identity.valueOf(kept.path("identity").asText(Identity.KEPT.name()));
  }

  /** What an intent keeps; empty if this program makes objects otherwise and can't repeat it. */
  static Optional<Making> repeatable(String text) {
    try {
      JsonNode kept = JSON.readTree(text);
      Identity identity = identity(kept);
      if (!kept.path("version").asText().equals(version(identity)) || !kept.isObject()) {
        return Optional.empty();
      }
      return Optional.of(
          new Making(
              version(identity),
              kept.path("institution").asText(),
              ZoneId.of(kept.path("zone").asText()),
              LowerArchShown.valueOf(kept.path("lowerArch").asText()),
              identity));
    } catch (JsonProcessingException | DateTimeException | IllegalArgumentException unknown) {
      return Optional.empty();
    }
  }
}
