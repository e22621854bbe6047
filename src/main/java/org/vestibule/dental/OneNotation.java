package org.vestibule.dental;

import java.util.List;
import java.util.Optional;
import org.vestibule.base.Outcome;

/** Sees to it that whoever names teeth does so in one notation. */
final class OneNotation {

  private Optional<Notation> notation = Optional.empty();
  private String said = "";

  /** One more text; refused if its notation is another than that of the texts before it. */
  Outcome<OneNotation> text(Optional<Notation> named, List<TeethItem> items) {
    if (named.isPresent()) {
      Outcome<OneNotation> kept = marked(named.get(), "the text says " + named.get().words());
      if (kept instanceof Outcome.Refused<OneNotation>) {
        return kept;
      }
    }
    for (TeethItem item : items) {
      for (TeethItem.Mark mark : item.marks()) {
        Outcome<OneNotation> kept = marked(mark.notation(), mark.words());
        if (kept instanceof Outcome.Refused<OneNotation>) {
          return kept;
        }
      }
    }
    return Outcome.done(this);
  }

  private Outcome<OneNotation> marked(Notation now, String words) {
    if (notation.isPresent() && notation.get() != now) {
      return Outcome.refused(
          "notations are mixed: " + said + ", but " + words, "write all teeth in one notation");
    }
    if (notation.isEmpty()) {
      notation = Optional.of(now);
      said = words;
    }
    return Outcome.done(this);
  }
}
