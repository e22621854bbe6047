package org.vestibule.dental;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.vestibule.base.Outcome;

/** Where in a treatment a photograph was taken (common practice, no source). */
public enum Stage {
  BEFORE("before", "preop", "pre-op", "initial", "baseline"),
  ISOLATED("isolated", "isolation", "rubber dam"),
  PREPARED("prepared", "prep", "preparation"),
  DURING("during", "intraop", "in progress"),
  AFTER("after", "postop", "post-op", "final"),
  FOLLOW_UP("follow-up", "followup", "follow up", "recall", "review");

  private static final Map<String, Stage> BY_SAYING = bySaying();

  @SuppressWarnings("ImmutableEnumChecker") // List.of never changes
  private final List<String> says;

  Stage(String... says) {
    this.says = List.of(says);
  }

  private static Map<String, Stage> bySaying() {
    Map<String, Stage> stages = new HashMap<>();
    for (Stage stage : values()) {
      stage.says.forEach(word -> stages.putIfAbsent(word, stage));
    }
    return Map.copyOf(stages);
  }

  public String words() {
    return says().get(0);
  }

  /** The words people use for it, the first being ours. */
  public List<String> says() {
    return says;
  }

  /** All words for all stages. */
  public static List<String> allWords() {
    List<String> all = new ArrayList<>();
    for (Stage stage : values()) {
      all.addAll(stage.says());
    }
    return List.copyOf(all);
  }

  /** The stage that a word or phrase names, if any. */
  public static Optional<Stage> named(String words) {
    return Optional.ofNullable(BY_SAYING.get(asked(words)));
  }

  private static String asked(String words) {
    return words.trim().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The stage that a word or phrase names, or the nearest words. */
  public static Outcome<Stage> find(String words) {
    Optional<Stage> named = named(words);
    if (named.isPresent()) {
      return Outcome.done(named.get());
    }
    String asked = asked(words);
    return Outcome.refused(
        "\"" + asked + "\" is not a known stage",
        new NearestWords(allWords())
            .suggestion(asked, "say before, isolated, prepared, during, after or follow-up"));
  }
}
