package org.vestibule.assign;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What a person says about a photograph, as they wrote it.
 *
 * @param facts what was said; nothing blank
 * @param by the person's name; empty if nobody is named
 * @param seen true if the person looked at this very picture, not only at a list
 * @param phone where the visit is the word of who opened a phone's page for it; null elsewhere
 */
public record PersonWords(
    Map<PhotoFact, String> facts, String by, boolean seen, @Nullable PhoneStay phone) {

  /** Nothing was said. */
  public static final PersonWords NONE = new PersonWords(Map.of(), "", false, null);

  public PersonWords {
    Map<PhotoFact, String> said = new EnumMap<>(PhotoFact.class);
    facts.forEach(
        (fact, words) -> {
          if (!words.isBlank()) {
            said.put(fact, words.strip());
          }
        });
    facts = Collections.unmodifiableMap(said);
    by = by.strip();
  }

  /** Nothing yet, said by this person. */
  public static PersonWords by(String person) {
    return new PersonWords(Map.of(), person, false, null);
  }

  /** What was said of a fact; empty if nothing was. */
  public String get(PhotoFact fact) {
    return facts.getOrDefault(fact, "");
  }

  /** True if something was said of the fact. */
  public boolean says(PhotoFact fact) {
    return facts.containsKey(fact);
  }

  /** The same and this; null or blank for nothing said of the fact. */
  public PersonWords with(PhotoFact fact, @Nullable String words) {
    Map<PhotoFact, String> said = new EnumMap<>(PhotoFact.class);
    said.putAll(facts);
    said.put(fact, words == null ? "" : words);
    return new PersonWords(said, by, seen, phone);
  }

  /** The same, said by a person who looked at this very picture. */
  public PersonWords seenByPerson() {
    return new PersonWords(facts, by, true, phone);
  }

  /** The same, said by opening a phone's page for the visit. */
  public PersonWords byPhone(PhoneStay stay) {
    return new PersonWords(facts, by, seen, stay);
  }

  /** True if nothing is said about the photograph. */
  public boolean isBlank() {
    return facts.isEmpty();
  }

  /** True if both say the same about the photograph. */
  boolean sameFacts(PersonWords other) {
    return facts.equals(other.facts);
  }
}
