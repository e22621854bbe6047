package org.vestibule.web;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.vestibule.assign.PersonWords;
import org.vestibule.assign.PhotoFact;
import org.vestibule.flow.Doubt;
import org.vestibule.flow.FilingByHand;

/**
 * What a person says of a photograph on the page, as the page sends it. The page shows every fact,
 * so that one left blank is said to be none; and whoever uses it has the picture itself in view.
 */
final class Labels {

  private static final Set<PhotoFact> YES_OR_NO = EnumSet.of(PhotoFact.TRIM, PhotoFact.SALVAGE);

  private Labels() {}

  /**
   * The words.
   *
   * @param field what a field holds, by the word of its fact
   */
  static PersonWords words(UnaryOperator<String> field, String person) {
    PersonWords words = PersonWords.by(person);
    for (PhotoFact fact : PhotoFact.values()) {
      String said = field.apply(fact.word());
      String blank = fact.mayBeNone() ? "none" : YES_OR_NO.contains(fact) ? "no" : "";
      words = words.with(fact, said.isEmpty() ? blank : said);
    }
    return words.seenByPerson();
  }

  /** What was decided over a preview. */
  static FilingByHand.Decided decided(UnaryOperator<String> field, String person) {
    Set<String> answered = Set.of(field.apply("answered").split(","));
    return new FilingByHand.Decided(
        words(field, person),
        field.apply("shown"),
        Arrays.stream(Doubt.Kind.values())
            .filter(kind -> answered.contains(kind.name()))
            .collect(Collectors.toSet()));
  }
}
