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
import java.util.function.Supplier;
import java.util.stream.StreamSupport;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Decision;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.quality.Measured;
import org.vestibule.quality.QualityAdvice;
import org.vestibule.quality.QualityFinding;
import org.vestibule.quality.QualityKind;
import org.vestibule.quality.QualityThresholds;
import org.vestibule.quality.Sharpness;
import org.vestibule.quality.Subject;
import org.vestibule.store.index.IndexRecord;
import org.vestibule.store.index.IndexRecordJson;
import org.vestibule.store.ledger.Arrivals;
import org.vestibule.store.ledger.ChangeRow;
import org.vestibule.store.ledger.Changes;

/**
 * What could be better about the pictures that are filed: measured once, kept in the ledger with
 * each measure and its limit, never a reason against a photograph.
 */
final class PictureAdvice {

  private static final String KIND = "quality 1";
  private static final String WAITING = "quality while waiting 1";
  private static final String BLUR = key(QualityKind.BLUR);
  private static final String COLOUR = key(QualityKind.COLOUR_CAST);
  private static final String SERIES = "series";
  private static final ObjectMapper JSON = new ObjectMapper();

  private final Arrivals arrivals;
  private final Changes changes;
  private final QualityThresholds thresholds;

  PictureAdvice(Practice practice) {
    this.arrivals = practice.store().ledger().arrivals();
    this.changes = practice.store().ledger().changes();
    this.thresholds = practice.settings().quality();
  }

  /** Judges a picture; null if only a part or a kept frame of it is at hand. Any thread may. */
  static @Nullable QualityAdvice judge(
      Picture picture, FirstSight sight, Decision decision, QualityThresholds thresholds) {
    Measured measured = sight.measured();
    return picture.isBare() || measured == null
        ? null
        : QualityAdvice.of(picture.facts(), measured, Subject.of(decision.view()), thresholds);
  }

  /**
   * Looks at a photograph that waits, once; its view and its series are not known, so teeth and
   * blur are not judged.
   *
   * @param sight what was seen of it in this run, if anything
   * @return what {@link #keepWaiting} keeps; empty if it was looked at before, or can't be
   */
  Optional<String> lookWaiting(
      ContentHash hash, CaptureFacts facts, FirstSight sight, Supplier<Outcome<byte[]>> file) {
    if (arrivals.facts(hash, WAITING).isPresent()) {
      return Optional.empty();
    }
    Measured measured = sight.measured();
    if (measured == null && file.get() instanceof Done<byte[]> bytes) {
      measured = FirstSight.of(bytes.value()).measured();
    }
    return measured == null
        ? Optional.empty()
        : Optional.of(
            AdviceJson.write(
                QualityAdvice.of(facts, measured, Subject.UNKNOWN, thresholds).findings()));
  }

  void keepWaiting(ContentHash hash, String found) {
    arrivals.facts(hash, WAITING, found);
  }

  /** What was found when a photograph came in that waits; empty if it was not looked at. */
  List<Advice> waiting(ContentHash hash) {
    return arrivals.facts(hash, WAITING).map(AdviceJson::read).orElse(List.of());
  }

  /**
   * What is kept of a picture that was filed.
   *
   * @param said what could be better, as it was measured now
   * @param keys of all that is known, for searching
   */
  record Kept(List<QualityFinding> said, List<String> keys) {}

  /**
   * Compares a picture's sharpness with those filed before it in its series, and keeps all of it,
   * beside what a grey card said earlier.
   *
   * @param advice what was measured now; null if nothing could be, so that what was found earlier
   *     stands
   */
  Kept keep(ContentHash hash, Decision decision, @Nullable QualityAdvice advice) {
    Optional<String> earlier = arrivals.facts(hash, KIND);
    if (advice == null) {
      return new Kept(List.of(), earlier.map(text -> keys(object(text))).orElse(List.of()));
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
    ObjectNode json = write(advice.sharpness(), findings);
    earlier.ifPresent(text -> copyColour(object(text), json));
    arrivals.mark(hash, SERIES, series);
    arrivals.facts(hash, KIND, json.toString());
    judgeAgain(hash, series);
    return new Kept(findings, keys(json));
  }

  private static void copyColour(ObjectNode from, ObjectNode to) {
    for (JsonNode one : from.path("findings")) {
      if (one.path("kind").asText().equals(COLOUR)) {
        to.withArray("findings").add(one);
      }
    }
  }

  /** What could be better about a filed picture, each with its measure and limit, in words. */
  List<String> standing(ContentHash hash) {
    List<String> words = new ArrayList<>();
    arrivals.facts(hash, KIND).map(PictureAdvice::object).stream()
        .flatMap(json -> StreamSupport.stream(json.path("findings").spliterator(), false))
        .forEach(one -> words.add(words(one)));
    return words;
  }

  private static String words(JsonNode one) {
    String key = one.path("kind").asText();
    for (QualityKind kind : QualityKind.values()) {
      if (key(kind).equals(key)) {
        return kind.words()
            + " ("
            + Advice.measure(kind, one.path("measured").asDouble())
            + "; limit "
            + Advice.measure(kind, one.path("threshold").asDouble())
            + ")";
      }
    }
    return key;
  }

  /** Keeps what a grey card said; empty if the colours are as they should be. */
  void colour(ContentHash hash, Optional<QualityFinding> finding) {
    ObjectNode json =
        arrivals.facts(hash, KIND).map(PictureAdvice::object).orElseGet(JSON::createObjectNode);
    exchange(json, COLOUR, finding);
    arrivals.facts(hash, KIND, json.toString());
    describeAgain(hash, keys(json));
  }

  private static void exchange(ObjectNode json, String kind, Optional<QualityFinding> finding) {
    ArrayNode findings = json.withArray("findings");
    List<JsonNode> rest = new ArrayList<>();
    findings.forEach(rest::add);
    findings.removeAll();
    rest.stream().filter(one -> !one.path("kind").asText().equals(kind)).forEach(findings::add);
    finding.ifPresent(found -> add(findings, found));
  }

  /** The first ones of a series had too few to be compared with; now they may have enough. */
  private void judgeAgain(ContentHash newest, String series) {
    for (ContentHash earlier : arrivals.marked(SERIES, series)) {
      Optional<String> kept = arrivals.facts(earlier, KIND);
      if (earlier.equals(newest) || kept.isEmpty()) {
        continue;
      }
      Optional<QualityFinding> blur =
          QualityAdvice.blur(sharpness(kept.get()), others(earlier, series), thresholds);
      ObjectNode json = object(kept.get());
      if (blur.isPresent() != keys(json).contains(BLUR)) {
        exchange(json, BLUR, blur);
        arrivals.facts(earlier, KIND, json.toString());
        describeAgain(earlier, keys(json));
      }
    }
  }

  private static List<String> keys(JsonNode json) {
    List<String> keys = new ArrayList<>();
    json.path("findings").forEach(one -> keys.add(one.path("kind").asText()));
    return keys.stream().distinct().toList();
  }

  /** Lets search follow; a photograph that is in no search any more stays out. */
  private void describeAgain(ContentHash hash, List<String> advice) {
    changes
        .latest(hash.hex())
        .map(ChangeRow::record)
        .map(IndexRecordJson::read)
        .filter(IndexRecord::filed)
        .ifPresent(record -> changes.put(hash.hex(), IndexRecordJson.write(record.with(advice))));
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

  private static ObjectNode write(Sharpness sharpness, List<QualityFinding> findings) {
    ObjectNode json = JSON.createObjectNode();
    json.put("variance", sharpness.variance());
    json.put("fine", sharpness.fine());
    json.put("previewSide", sharpness.previewSide());
    json.put("frameSide", sharpness.frameSide());
    ArrayNode found = json.putArray("findings");
    findings.forEach(finding -> add(found, finding));
    return json;
  }

  private static void add(ArrayNode to, QualityFinding finding) {
    to.addObject()
        .put("kind", key(finding.kind()))
        .put("measured", finding.measured())
        .put("threshold", finding.threshold());
  }

  private static ObjectNode object(String text) {
    try {
      return (ObjectNode) JSON.readTree(text);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("what the ledger says of a picture is not JSON", e);
    }
  }

  private static Sharpness sharpness(String text) {
    JsonNode json = object(text);
    return new Sharpness(
        json.path("variance").asDouble(),
        json.path("fine").asDouble(),
        json.path("previewSide").asInt(),
        json.path("frameSide").asInt());
  }
}
