package org.vestibule.assign;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;
import org.vestibule.dental.Accessory;
import org.vestibule.dental.AccessoryCatalogue;
import org.vestibule.dental.Edge;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;

/** Reads the words for mirror, incisors, crop, accessories and trim. */
final class CaptureWords {

  /** A stated mirror, and whether the words say that the picture itself was looked at. */
  record StatedMirror(Mirror mirror, boolean seen) {}

  private static final Map<String, Mirror> MIRRORS =
      Map.of(
          "none", Mirror.NONE,
          "no", Mirror.NONE,
          "direct", Mirror.NONE,
          "as shot", Mirror.AS_SHOT,
          "mirrored", Mirror.AS_SHOT,
          "corrected", Mirror.CORRECTED,
          "already corrected", Mirror.CORRECTED);
  private static final Map<String, Edge> EDGES =
      Map.of(
          "top", Edge.TOP,
          "up", Edge.TOP,
          "bottom", Edge.BOTTOM,
          "down", Edge.BOTTOM,
          "left", Edge.LEFT,
          "right", Edge.RIGHT);
  private static final String SEEN = " seen";
  private static final Map<String, Boolean> YES_OR_NO =
      Map.of("", false, "no", false, "false", false, "yes", true, "true", true);

  private CaptureWords() {}

  static Outcome<StatedMirror> mirror(String words) {
    String plain = plain(words);
    boolean seen = plain.endsWith(SEEN);
    String rest = seen ? plain.substring(0, plain.length() - SEEN.length()).strip() : plain;
    Mirror mirror = MIRRORS.get(rest);
    if (mirror == null) {
      return Outcome.refused(
          "the mirror is not said in words that are understood",
          "write none, as shot (still a mirror image) or corrected (already flipped)");
    }
    return Outcome.done(new StatedMirror(mirror, seen));
  }

  static String words(Mirror mirror) {
    return switch (mirror) {
      case NONE -> "none";
      case AS_SHOT -> "as shot";
      case CORRECTED -> "corrected";
      case UNKNOWN -> throw new IllegalArgumentException("an unknown mirror has no word");
    };
  }

  /** The edge at which the incisors lie. */
  static Outcome<Incisors> incisors(String words) {
    return edge(words, "where the incisors lie is").map(edge -> Incisors.valueOf(edge.name()));
  }

  /** The edge that is towards the top of the head. */
  static Outcome<Edge> up(String words) {
    return edge(words, "which edge is up is");
  }

  private static Outcome<Edge> edge(String words, String what) {
    Edge edge = EDGES.get(plain(words));
    return edge == null
        ? Outcome.refused(
            what + " not said in words that are understood",
            "write top, bottom, left or right, as the look sheet shows the picture")
        : Outcome.done(edge);
  }

  static String words(Enum<?> edge) {
    return edge.name().toLowerCase(Locale.ROOT);
  }

  /** The word for where on the look sheet a person sees an edge of the raw picture. */
  static String onSheet(Edge raw, @Nullable Integer exifOrientation) {
    return words(raw.inRaw(Turn.asShown(exifOrientation).inverse()));
  }

  /** The word for where on the look sheet a person sees the incisors. */
  static String onSheet(Incisors raw, @Nullable Integer exifOrientation) {
    return onSheet(Edge.valueOf(raw.name()), exifOrientation);
  }

  static Outcome<List<Accessory>> accessories(String words) {
    List<Accessory> found = new ArrayList<>();
    for (String part : words.split("[;|]", -1)) {
      if (part.isBlank()) {
        continue;
      }
      Outcome<Accessory> accessory = AccessoryCatalogue.find(part);
      if (!(accessory instanceof Outcome.Done<Accessory> done)) {
        return ((Outcome.Refused<Accessory>) accessory).as();
      }
      if (!found.contains(done.value())) {
        found.add(done.value());
      }
    }
    return Outcome.done(found);
  }

  static Outcome<Boolean> yesOrNo(String words) {
    Boolean answer = YES_OR_NO.get(plain(words));
    return answer == null
        ? Outcome.refused("it is neither yes nor no", "write yes, or leave it out")
        : Outcome.done(answer);
  }

  private static String plain(String words) {
    return words.toLowerCase(Locale.ROOT).replaceAll("[\\s_(),-]+", " ").strip();
  }
}
