package org.vestibule.dental;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.vestibule.base.Outcome;

/** A set of views that is taken together. */
public enum Series {
  BASELINE("baseline"),
  ORTHODONTIC("orthodontic"),
  AESTHETIC("aesthetic"),
  SINGLE_RESTORATION("single restoration"),
  SHADE("shade"),
  TRAUMA("trauma"),
  LESION("lesion");

  private final String words;

  Series(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** The series of this name; capitals, underscores and hyphens don't matter. */
  public static Outcome<Series> find(String words) {
    String asked = words.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ");
    for (Series series : values()) {
      if (series.words.equals(asked)) {
        return Outcome.done(series);
      }
    }
    List<String> known = Stream.of(values()).map(Series::words).toList();
    return Outcome.refused(
        "this is not a series that is known",
        new NearestWords(known).suggestion(asked, "say " + String.join(", ", known)));
  }
}
