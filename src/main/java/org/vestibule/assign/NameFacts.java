package org.vestibule.assign;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What the patterns find in a photograph's folder and file name.
 *
 * @param said by place, such as patient; empty if no pattern fits
 * @param unclear true if patterns fit in several ways or disagree
 */
record NameFacts(Map<String, String> said, boolean unclear) {

  static final NameFacts NONE = new NameFacts(Map.of(), false);

  static NameFacts of(List<NamePattern> patterns, String name) {
    Map<String, String> said = new TreeMap<>();
    boolean unclear = false;
    for (NamePattern pattern : patterns) {
      Optional<NamePattern.Reading> reading = pattern.read(name);
      if (reading.isEmpty()) {
        continue;
      }
      unclear |= reading.get().unclear();
      for (Map.Entry<String, String> place : reading.get().said().entrySet()) {
        String other = said.putIfAbsent(place.getKey(), place.getValue());
        unclear |= other != null && !other.equals(place.getValue());
      }
    }
    return new NameFacts(unclear ? Map.of() : Map.copyOf(said), unclear);
  }

  /** What stands at a place; empty if nothing does. */
  String get(String place) {
    return said.getOrDefault(place, "");
  }

  boolean namesVisit() {
    return said.containsKey("patient") || said.containsKey("visit");
  }
}
