package org.vestibule.flow;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import org.jspecify.annotations.Nullable;
import org.vestibule.intake.CaptureFacts;

/** Camera facts as the ledger keeps them: what an object may hold, and what decides about sides. */
final class FactsJson {

  static final String KIND = "camera";

  private static final ObjectMapper JSON = new ObjectMapper();

  private FactsJson() {}

  static String write(CaptureFacts facts) {
    ObjectNode json = JSON.createObjectNode();
    put(json, "takenAt", facts.takenAt());
    put(json, "offset", facts.offset());
    put(json, "subsecond", facts.subsecond());
    put(json, "make", facts.make());
    put(json, "model", facts.model());
    put(json, "lens", facts.lens());
    json.put("exposureSeconds", facts.exposureSeconds());
    json.put("fNumber", facts.fNumber());
    json.put("iso", facts.iso());
    json.put("focalLengthMm", facts.focalLengthMm());
    json.put("focalLength35Mm", facts.focalLength35Mm());
    json.put("flash", facts.flash());
    json.put("whiteBalance", facts.whiteBalance());
    json.put("digitalZoomRatio", facts.digitalZoomRatio());
    json.put("orientation", facts.orientation());
    json.put("frontLens", facts.frontLens());
    ArrayNode traces = json.putArray("editingTraces");
    facts.editingTraces().forEach(traces::add);
    return json.toString();
  }

  static CaptureFacts read(String text) {
    JsonNode json;
    try {
      json = JSON.readTree(text);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("the ledger's camera facts are not JSON", e);
    }
    String takenAt = text(json, "takenAt");
    String offset = text(json, "offset");
    return CaptureFacts.builder()
        .takenAt(takenAt == null ? null : LocalDateTime.parse(takenAt))
        .offset(offset == null ? null : ZoneOffset.of(offset))
        .subsecond(text(json, "subsecond"))
        .make(text(json, "make"))
        .model(text(json, "model"))
        .lens(text(json, "lens"))
        .exposureSeconds(number(json, "exposureSeconds"))
        .fNumber(number(json, "fNumber"))
        .iso(whole(json, "iso"))
        .focalLengthMm(number(json, "focalLengthMm"))
        .focalLength35Mm(whole(json, "focalLength35Mm"))
        .flash(whole(json, "flash"))
        .whiteBalance(whole(json, "whiteBalance"))
        .digitalZoomRatio(number(json, "digitalZoomRatio"))
        .orientation(whole(json, "orientation"))
        .frontLens(json.path("frontLens").asBoolean())
        .editingTraces(json.path("editingTraces").valueStream().map(JsonNode::asText).toList())
        .build();
  }

  private static void put(ObjectNode json, String key, @Nullable Object value) {
    json.put(key, value == null ? null : value.toString());
  }

  private static @Nullable String text(JsonNode json, String key) {
    return json.path(key).isTextual() ? json.path(key).asText() : null;
  }

  private static @Nullable Double number(JsonNode json, String key) {
    return json.path(key).isNumber() ? json.path(key).asDouble() : null;
  }

  private static @Nullable Integer whole(JsonNode json, String key) {
    return json.path(key).isNumber() ? json.path(key).asInt() : null;
  }
}
