package org.vestibule.flow;

import java.util.Locale;
import org.vestibule.assign.PersonWords;
import org.vestibule.assign.PhotoFact;

/** What a person says about a photograph they look at, for tests. */
final class ByPerson {

  private ByPerson() {}

  /** The person, then names of facts, each with what is said. */
  static PersonWords says(String person, String... facts) {
    PersonWords words = PersonWords.by(person).seenByPerson();
    for (int i = 0; i < facts.length; i += 2) {
      words = words.with(PhotoFact.valueOf(facts[i].toUpperCase(Locale.ROOT)), facts[i + 1]);
    }
    return words;
  }
}
