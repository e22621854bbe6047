package org.vestibule.assign;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What is known or likely of a photograph that waits, as a person would write it. Never filed by
 * itself.
 *
 * @param facts what is known; nothing blank
 * @param mirrorStated true if a person or a standing statement said the mirror, false if it is
 *     merely usual
 */
public record Proposal(Map<PhotoFact, String> facts, boolean mirrorStated) {

  public Proposal {
    Map<PhotoFact, String> known = new EnumMap<>(PhotoFact.class);
    known.putAll(facts);
    facts = Collections.unmodifiableMap(known);
  }

  /** What is known of a fact, or null. */
  public @Nullable String get(PhotoFact fact) {
    return facts.get(fact);
  }
}
