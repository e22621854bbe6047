package org.vestibule.assign;

import java.util.ArrayList;
import java.util.List;

/** The views that a view is mistaken for: the same of the other side and of the other arch. */
final class Counterparts {

  private static final List<List<String>> OPPOSITES =
      List.of(List.of("right", "left"), List.of("upper", "lower"), List.of("palatal", "lingual"));

  private Counterparts() {}

  /** Keys of the counterparts; none for a view that names neither side nor arch. */
  static List<String> of(String key) {
    List<String> parts = List.of(key.split("-", -1));
    List<String> found = new ArrayList<>();
    for (List<String> pair : OPPOSITES) {
      swapped(parts, pair.get(0), pair.get(1), found);
      swapped(parts, pair.get(1), pair.get(0), found);
    }
    return found;
  }

  private static void swapped(List<String> parts, String one, String other, List<String> found) {
    if (parts.contains(one)) {
      found.add(
          String.join("-", parts.stream().map(part -> part.equals(one) ? other : part).toList()));
    }
  }
}
