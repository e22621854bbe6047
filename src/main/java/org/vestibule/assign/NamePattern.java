package org.vestibule.assign;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.vestibule.base.Outcome;
import org.vestibule.intake.FileNames;

/**
 * What folder and file names mean in a practice, such as <code>{patient}/{date}/*</code> or <code>
 * {patient}_{view}_{teeth}</code>. The whole path below the inbox must fit, without the file's
 * extension: <code>{patient}</code>, <code>{visit}</code>, <code>{date}</code>, <code>{view}</code>
 * and <code>{teeth}</code> stand for a part of a name, <code>*</code> for any part that means
 * nothing, <code>**</code> for any number of folders; everything else stands for itself.
 */
public final class NamePattern {

  static final List<String> PLACES = List.of("patient", "visit", "date", "view", "teeth");

  private static final Pattern TOKEN = Pattern.compile("\\{([^{}]*)}|\\*\\*/|\\*|[^{}*]+|[{}]");

  private final String text;
  private final List<String> places;
  private final Pattern shortest;
  private final Pattern longest;

  private NamePattern(String text, List<String> places, Pattern shortest, Pattern longest) {
    this.text = text;
    this.places = List.copyOf(places);
    this.shortest = shortest;
    this.longest = longest;
  }

  /** What a name says; {@code unclear} if the pattern fits it in several ways. */
  record Reading(Map<String, String> said, boolean unclear) {}

  public static Outcome<NamePattern> parse(String text) {
    List<String> places = new ArrayList<>();
    StringBuilder shortest = new StringBuilder();
    StringBuilder longest = new StringBuilder();
    boolean afterAny = false;
    Matcher tokens = TOKEN.matcher(text.strip());
    while (tokens.find()) {
      String token = tokens.group();
      String place = tokens.group(1);
      if (place != null) {
        String known = place.strip().toLowerCase(Locale.ROOT);
        if (!PLACES.contains(known) || places.contains(known)) {
          return Outcome.refused(
              "a name pattern has {" + place + "}, which is not known or stands there twice",
              "use each of {" + String.join("}, {", PLACES) + "} at most once");
        }
        if (afterAny) {
          return Outcome.refused(
              "a name pattern has nothing between {" + known + "} and the part before it",
              "write what stands between them, such as _ or /");
        }
        afterAny = true;
        places.add(known);
        shortest.append("([^/]+?)");
        longest.append("([^/]+)");
      } else if (token.equals("{") || token.equals("}")) {
        return Outcome.refused("a name pattern has a brace without its partner", "close it");
      } else if (token.equals("**/") || token.equals("*")) {
        if (afterAny && token.equals("*")) {
          return Outcome.refused(
              "a name pattern has nothing between * and the part before it",
              "write what stands between them, such as _ or /");
        }
        afterAny = token.equals("*");
        String any = token.equals("*") ? "[^/]*" : "(?:[^/]+/)*";
        places.add("");
        shortest.append('(').append(any).append("?)");
        longest.append('(').append(any).append(')');
      } else {
        afterAny = false;
        shortest.append(Pattern.quote(FileNames.key(token)));
        longest.append(Pattern.quote(FileNames.key(token)));
      }
    }
    if (places.stream().allMatch(String::isEmpty)) {
      return Outcome.refused(
          "a name pattern says nothing",
          "use at least one of {" + String.join("}, {", PLACES) + "}");
    }
    return Outcome.done(
        new NamePattern(
            text.strip(),
            places,
            Pattern.compile(shortest.toString(), Pattern.DOTALL),
            Pattern.compile(longest.toString(), Pattern.DOTALL)));
  }

  /** The pattern as it was written. */
  public String text() {
    return text;
  }

  /**
   * What a path below the inbox says, if it fits. Matched once with every part as short and once as
   * long as it can be: if both agree in every part, the free ones included, there is no third way.
   */
  Optional<Reading> read(String name) {
    String key = FileNames.key(FileNames.stem(name));
    Matcher one = shortest.matcher(key);
    Matcher other = longest.matcher(key);
    if (!one.matches() || !other.matches()) {
      return Optional.empty();
    }
    Map<String, String> said = new TreeMap<>();
    boolean unclear = false;
    for (int at = 0; at < places.size(); at++) {
      unclear |= !one.group(at + 1).equals(other.group(at + 1));
      if (!places.get(at).isEmpty()) {
        said.put(places.get(at), one.group(at + 1).strip());
      }
    }
    return Optional.of(new Reading(said, unclear));
  }
}
