package org.vestibule.check;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A condition of the attribute table, in a small language:
 *
 * <pre>
 *   condition := clause { " or " clause }
 *   clause    := test { " and " test }
 *   test      := "present" K | "absent" K | "filled" K | K "=" V { "|" V } | K "[" n "]" "=" V …
 *              | K "&gt;" number | "module" M | "extended text" | "always" | "never" | "unknown"
 * </pre>
 *
 * K is a keyword in the same data set or item, V a value; {@code unknown} stands for what no file
 * can tell, such as whether a procedure was scheduled.
 */
final class Condition {

  private static final Pattern COMPARED = Pattern.compile("(\\w+)(?:\\[(\\d+)])? (=|>) (.+)");

  /** Clauses of which one must hold; in each, every test must. */
  private final List<List<Test>> clauses;

  private final String text;

  private interface Test {
    Truth ask(Place place);
  }

  private Condition(List<List<Test>> clauses, String text) {
    this.clauses = clauses;
    this.text = text;
  }

  static Condition parse(String text) {
    List<List<Test>> clauses =
        List.of(text.split(" or ", -1)).stream()
            .map(
                clause -> List.of(clause.split(" and ", -1)).stream().map(Condition::test).toList())
            .toList();
    return new Condition(clauses, text);
  }

  Truth ask(Place place) {
    Truth any = Truth.FALSE;
    for (List<Test> clause : clauses) {
      Truth all = Truth.TRUE;
      for (Test test : clause) {
        all = all.and(test.ask(place));
      }
      any = any.or(all);
    }
    return any;
  }

  /** The condition as the table writes it. */
  String text() {
    return text;
  }

  private static Test test(String text) {
    return switch (text) {
      case "always" -> place -> Truth.TRUE;
      case "never" -> place -> Truth.FALSE;
      case "unknown" -> place -> Truth.UNKNOWN;
      case "extended text" -> place -> Truth.of(place.hasExtendedText());
      default -> worded(text);
    };
  }

  private static Test worded(String text) {
    int space = text.indexOf(' ');
    String word = space < 0 ? text : text.substring(0, space);
    String rest = text.substring(space + 1);
    return switch (word) {
      case "present" -> place -> Truth.of(place.has(rest));
      case "absent" -> place -> Truth.of(!place.has(rest));
      case "filled" -> place -> Truth.of(place.isFilled(rest));
      case "module" -> place -> Truth.of(place.hasModule(rest));
      default -> compared(text);
    };
  }

  private static Test compared(String text) {
    Matcher parts = COMPARED.matcher(text);
    if (!parts.matches()) {
      throw new IllegalStateException("the table holds the unreadable condition " + text);
    }
    int tag = Place.tag(parts.group(1));
    int index = parts.group(2) == null ? 1 : Integer.parseInt(parts.group(2));
    if (parts.group(3).equals(">")) {
      BigDecimal least = new BigDecimal(parts.group(4));
      return place ->
          Truth.of(place.here().decimal(tag).filter(n -> n.compareTo(least) > 0).isPresent());
    }
    List<String> wanted = List.of(parts.group(4).split("\\|", -1));
    return place -> Truth.of(value(place, tag, index).filter(wanted::contains).isPresent());
  }

  private static Optional<String> value(Place place, int tag, int index) {
    return place.here().strings(tag).stream().skip(index - 1L).findFirst();
  }
}
