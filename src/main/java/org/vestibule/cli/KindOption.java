package org.vestibule.cli;

import java.util.Iterator;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.flow.Why;
import picocli.CommandLine.Option;

/** Of what kind the reason for a correction is, as the imaging archive is told it. */
final class KindOption {

  @Option(
      names = "--reason",
      paramLabel = "KIND",
      completionCandidates = Kinds.class,
      description =
          "Of what kind that is, as the imaging archive is told: ${COMPLETION-CANDIDATES}. Otherwise"
              + " it follows from what was changed, and is unsafe where that doesn't tell.")
  private @Nullable String kind;

  /** The kinds there are. */
  static final class Kinds implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return Why.kinds().iterator();
    }
  }

  /** The words that were said, and of what kind they are. */
  Outcome<Why> of(Outcome<String> words) {
    return words.then(said -> Why.of(said, kind));
  }
}
