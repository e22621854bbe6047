package org.vestibule.flow;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Crop;
import org.vestibule.assign.Decision;
import org.vestibule.assign.PersonWords;
import org.vestibule.assign.Proposal;
import org.vestibule.assign.WaitReason;
import org.vestibule.base.Turn;
import org.vestibule.dental.Accessory;
import org.vestibule.dental.Incisors;

/** Proposals by name of the fact, each as a person would write it. */
final class ProposalWords {

  private static final String LIKELY = " (usual, not stated)";

  private ProposalWords() {}

  static Map<String, String> of(Proposal proposal) {
    Map<String, String> words = new LinkedHashMap<>();
    put(words, "visit", proposal.visit());
    put(words, "patient", proposal.patientId());
    put(words, "view", proposal.view());
    put(words, "teeth", proposal.teeth());
    String mirror = proposal.mirror();
    put(words, "mirror", mirror == null || proposal.mirrorStated() ? mirror : mirror + LIKELY);
    put(words, "incisors", proposal.incisors());
    put(words, "crop", proposal.crop());
    put(words, "accessories", proposal.accessories());
    put(words, "stage", proposal.stage());
    put(words, "treatment", proposal.treatment());
    put(words, "note", proposal.note());
    return words;
  }

  /** A decision whose picture could not be filed, so that it need not be said again. */
  static Map<String, String> of(Decision decision, @Nullable Integer exifOrientation) {
    Map<String, String> words = new LinkedHashMap<>();
    put(words, "visit", decision.visit().key());
    put(words, "patient", decision.visit().patient().id());
    put(words, "view", decision.view().key());
    put(words, "teeth", decision.teeth().text());
    put(words, "mirror", decision.mirror().name().toLowerCase(Locale.ROOT).replace('_', ' '));
    if (decision.incisors() != null) {
      put(words, "incisors", onSheet(decision.incisors(), exifOrientation));
    }
    Crop crop = decision.crop();
    if (crop != null) {
      put(words, "crop", crop.left() + "," + crop.top() + "," + crop.right() + "," + crop.bottom());
    }
    put(
        words,
        "accessories",
        decision.accessories().stream().map(Accessory::key).collect(Collectors.joining(";")));
    put(words, "stage", decision.stage() == null ? null : decision.stage().words());
    put(words, "treatment", decision.treatment());
    put(words, "note", decision.note());
    return words;
  }

  /** The edge on the sheet that lies at this edge of the raw picture. */
  private static String onSheet(Incisors raw, @Nullable Integer exifOrientation) {
    Turn sheet = exifOrientation == null ? Turn.NONE : Turn.ofExif(exifOrientation);
    return Arrays.stream(Incisors.values())
        .filter(edge -> edge.inRaw(sheet) == raw)
        .map(edge -> edge.name().toLowerCase(Locale.ROOT))
        .findFirst()
        .orElseThrow();
  }

  static List<WaitingPhoto.Reason> reasons(List<WaitReason> reasons) {
    return reasons.stream()
        .map(
            reason ->
                new WaitingPhoto.Reason(reason.kind().name(), reason.sentence(), reason.advice()))
        .toList();
  }

  /** What a person said, completed by the proposal where it was stated and not merely usual. */
  static PersonWords completed(PersonWords said, Map<String, String> proposal) {
    String mirror = proposal.getOrDefault("mirror", "");
    return new PersonWords(
        either(said.visit(), said.patient().isEmpty() ? proposal.get("visit") : ""),
        either(said.patient(), said.visit().isEmpty() ? proposal.get("patient") : ""),
        either(said.view(), proposal.get("view")),
        either(said.teeth(), proposal.get("teeth")),
        either(said.mirror(), mirror.endsWith(LIKELY) ? "" : mirror),
        either(said.incisors(), proposal.get("incisors")),
        either(said.crop(), proposal.get("crop")),
        either(said.accessories(), proposal.get("accessories")),
        either(said.stage(), proposal.get("stage")),
        either(said.treatment(), proposal.get("treatment")),
        either(said.note(), proposal.get("note")),
        said.trim(),
        said.by(),
        said.seen());
  }

  private static String either(String said, @Nullable String proposed) {
    return said.isEmpty() && proposed != null ? proposed : said;
  }

  private static void put(Map<String, String> words, String key, @Nullable String value) {
    if (value != null && !value.isBlank()) {
      words.put(key, value);
    }
  }
}
