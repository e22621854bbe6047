package org.vestibule.flow;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.encode.RejectionReason;

/**
 * Why something filed is corrected.
 *
 * @param words as the person said it; kept with the correction
 * @param reason of what kind it is, one of {@link #kinds}; null if it is to follow from what was
 *     changed
 */
public record Why(String words, @Nullable String reason) {

  /** Nothing is corrected. */
  static final Why NOTHING = new Why("", null);

  /** A reason in words alone. */
  public static Why of(String words) {
    return new Why(words, null);
  }

  /** A reason in words, and of what kind it is; refused if there is no such kind. */
  public static Outcome<Why> of(String words, @Nullable String reason) {
    return reason == null || kinds().contains(reason)
        ? Outcome.done(new Why(words, reason))
        : Outcome.refused(
            "\"" + reason + "\" is no kind of reason", "use one of " + String.join(", ", kinds()));
  }

  /** The kinds of reasons there are. */
  public static List<String> kinds() {
    return RejectionReason.all().stream().map(RejectionReason::word).toList();
  }

  /** The same of the kind that was stated, or else of this one. */
  Why orElse(String kind) {
    return new Why(words, reason == null ? kind : reason);
  }
}
