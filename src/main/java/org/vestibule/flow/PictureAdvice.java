package org.vestibule.flow;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Decision;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Turn;
import org.vestibule.jpeg.JpegStructure;
import org.vestibule.jpeg.PreviewReading;
import org.vestibule.quality.LookedAt;
import org.vestibule.quality.QualityAdvice;
import org.vestibule.quality.QualityFinding;
import org.vestibule.quality.QualityKind;
import org.vestibule.quality.QualityThresholds;
import org.vestibule.quality.Sharpness;
import org.vestibule.store.ledger.Arrivals;

/**
 * What could be better about the pictures that are filed: measured once, kept in the ledger with
 * each measure and its limit, never a reason against a photograph.
 */
final class PictureAdvice {

  private static final String KIND = "quality 1";
  private static final String SERIES = "series";
  private static final ObjectMapper JSON = new ObjectMapper();

  private final Arrivals arrivals;
  private final QualityThresholds thresholds;

  PictureAdvice(Practice practice) {
    this.arrivals = practice.store().ledger().arrivals();
    this.thresholds = practice.settings().quality();
  }

  /** Looks at a picture; empty if only a part or a kept frame of it is at hand. Any thread may. */
  static Optional<QualityAdvice> look(
      Picture picture, Decision decision, QualityThresholds thresholds) {
    if (picture.isBare()) {
      return Optional.empty();
    }
    byte[] bytes = picture.bytes();
    return PreviewReading.of(bytes, QualityAdvice.PREVIEW_SIDE, Turn.NONE)
                .then(
                    reading ->
                        JpegStructure.read(bytes)
                            .map(
                                structure ->
                                    QualityAdvice.of(
                                        new LookedAt(
                                            picture.facts(),
                                            structure.frame().size(),
                                            reading.preview(),
                                            reading.facts(),
                                            decision.view().showsFace(),
                                            null),
                                        List.of(),
                                        thresholds)))
            instanceof Done<QualityAdvice> done
        ? Optional.of(done.value())
        : Optional.empty();
  }

  /**
   * Compares a picture's sharpness with those filed before it in its series, and keeps all of it.
   *
   * @return what could be better
   */
  List<QualityFinding> keep(ContentHash hash, Decision decision, @Nullable QualityAdvice advice) {
    if (advice == null) {
      return List.of();
    }
    String series =
        decision.visit().patient().issuer()
            + "|"
            + decision.visit().key()
            + "|"
            + QualityAdvice.seriesKind(decision.view());
    List<QualityFinding> findings = new ArrayList<>(advice.findings());
    QualityAdvice.blur(advice.sharpness(), others(hash, series), thresholds)
        .ifPresent(findings::add);
    arrivals.mark(hash, SERIES, series);
    arrivals.facts(hash, KIND, write(advice.sharpness(), findings));
    return findings;
  }

  private List<Sharpness> others(ContentHash hash, String series) {
    return arrivals.marked(SERIES, series).stream()
        .filter(other -> !other.equals(hash))
        .flatMap(other -> arrivals.facts(other, KIND).stream())
        .map(PictureAdvice::sharpness)
        .toList();
  }

  /** The key of a kind for searching, such as {@code burnt-out-teeth}. */
  static String key(QualityKind kind) {
    return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static String write(Sharpness sharpness, List<QualityFinding> findings) {
    ObjectNode json = JSON.createObjectNode();
    json.put("variance", sharpness.variance());
    json.put("fine", sharpness.fine());
    json.put("previewSide", sharpness.previewSide());
    json.put("frameSide", sharpness.frameSide());
    ArrayNode found = json.putArray("findings");
    for (QualityFinding finding : findings) {
      found
          .addObject()
          .put("kind", key(finding.kind()))
          .put("measured", finding.measured())
          .put("threshold", finding.threshold());
    }
    return json.toString();
  }

  private static Sharpness sharpness(String text) {
    try {
      JsonNode json = JSON.readTree(text);
      return new Sharpness(
          json.path("variance").asDouble(),
          json.path("fine").asDouble(),
          json.path("previewSide").asInt(),
          json.path("frameSide").asInt());
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("what the ledger says of a picture is not JSON", e);
    }
  }
}
