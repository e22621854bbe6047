package org.vestibule.search;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.vestibule.store.index.IndexField;

/** Words that mean one thing in every practice: mirror, state, accessories, what fills a gap. */
final class FixedWords {

  private static final Map<String, Part> PARTS = parts();

  private FixedWords() {}

  private static Map<String, Part> parts() {
    Map<String, Part> parts = new TreeMap<>();
    put(parts, Part.of(IndexField.MIRROR, "mirror", "as-shot", "corrected"));
    put(parts, Part.of(IndexField.MIRROR, "direct", "none"), "no mirror", "without mirror");
    put(parts, Part.of(IndexField.STATE, "filed", "filed"));
    put(parts, Part.of(IndexField.STATE, "not filed", "waiting"), "waiting", "unfiled");
    put(parts, Part.of(IndexField.OCCUPANT, "implant", "implant"));
    put(parts, Part.of(IndexField.OCCUPANT, "pontic", "pontic"));
    put(parts, Part.of(IndexField.OCCUPANT, "gap", "gap"), "missing");
    put(parts, Part.of(IndexField.ADVICE, "blurred", "blur"), "blur", "unsharp");
    put(parts, Part.of(IndexField.ADVICE, "burnt out", "burnt-out-teeth"), "burnt-out");
    put(parts, Part.of(IndexField.ADVICE, "reflections", "glare"), "glare");
    put(parts, Part.of(IndexField.ADVICE, "digital zoom", "digital-zoom"));
    put(parts, Part.of(IndexField.ADVICE, "few pixels", "few-pixels"));
    put(parts, Part.of(IndexField.ADVICE, "tilted", "tilt"), "tilt");
    put(parts, Part.of(IndexField.ADVICE, "colour cast", "colour-cast"), "color cast");
    put(parts, Part.of(IndexField.ACCESSORY, "ruler", "ruler"));
    put(parts, Part.of(IndexField.ACCESSORY, "shade tab", "shade-tab"));
    put(
        parts,
        Part.of(
            IndexField.ACCESSORY,
            "contraster",
            "contraster-occlusal",
            "contraster-anterior",
            "contraster-cheek"));
    put(
        parts,
        Part.of(
            IndexField.ACCESSORY,
            "retractor",
            "retractor-double",
            "retractor-c",
            "retractor-oval"));
    return Map.copyOf(parts);
  }

  private static void put(Map<String, Part> parts, Part part, String... others) {
    parts.put(part.words(), part);
    List.of(others).forEach(other -> parts.put(other, part));
  }

  /** What a word or phrase in lower case means. */
  static Optional<Part> find(String phrase) {
    return Optional.ofNullable(PARTS.get(phrase));
  }

  static Set<String> all() {
    return PARTS.keySet();
  }
}
