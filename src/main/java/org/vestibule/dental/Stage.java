package org.vestibule.dental;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.vestibule.base.Outcome;

/** Where in a treatment a photograph was taken (common practice, no source). */
public enum Stage {
  BEFORE("before", "preop", "pre-op", "initial", "baseline"),
  ISOLATED("isolated", "isolation", "rubber dam"),
  PREPARED("prepared", "prep", "preparation"),
  DURING("during", "intraop", "in progress"),
  AFTER("after", "postop", "post-op", "final"),
  FOLLOW_UP("follow-up", "followup", "follow up", "recall", "review");

  private final String saysJoined;

  Stage(String... says) {
    this.saysJoined = String.join("|", says);
  }

  public String words() {
    return says().get(0);
  }

  /** The words people use for it, the first being ours. */
  public List<String> says() {
    return List.of(saysJoined.split("\\|", -1));
  }

  /** All words for all stages. */
  public static List<String> allWords() {
    List<String> all = new ArrayList<>();
    for (Stage stage : values()) {
      all.addAll(stage.says());
    }
    return List.copyOf(all);
  }

  /** The stage that a word or phrase names. */
  public static Outcome<Stage> find(String words) {
    String asked = words.trim().toLowerCase(Locale.ROOT).replace('_', '-');
    for (Stage stage : values()) {
      if (stage.says().contains(asked)) {
        return Outcome.done(stage);
      }
    }
    return Outcome.refused(
        "\"" + asked + "\" is not a known stage",
        new NearestWords(allWords())
            .suggestion(asked, "say before, isolated, prepared, during, after or follow-up"));
  }
}
