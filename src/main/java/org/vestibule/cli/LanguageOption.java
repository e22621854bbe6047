package org.vestibule.cli;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.flow.Practice;
import org.vestibule.words.Language;
import picocli.CommandLine.Option;

/** In which language something is printed. */
final class LanguageOption {

  @Option(
      names = "--language",
      paramLabel = "en|de",
      description = "In which language people read it; otherwise as the settings say.")
  private @Nullable String tag;

  /** The language that was said, else the practice's. */
  Outcome<Language> of(Practice practice) {
    if (tag == null) {
      return Outcome.done(practice.settings().language());
    }
    Optional<Language> said = Language.of(tag.strip());
    return said.isPresent()
        ? Outcome.done(said.get())
        : Outcome.refused(
            "there are no words in the language \"" + tag.strip() + "\"", "say en or de");
  }
}
