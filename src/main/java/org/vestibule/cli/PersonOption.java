package org.vestibule.cli;

import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import picocli.CommandLine.Option;

/** Who is acting; the ledger keeps the name with what they did. */
final class PersonOption {

  @Option(
      names = "--by",
      paramLabel = "NAME",
      description = "Who says so; kept with the decision. Otherwise VESTIBULE_BY.")
  private @Nullable String by;

  Outcome<String> name(Surroundings surroundings) {
    String name = by != null ? by : surroundings.environment().get("VESTIBULE_BY");
    if (name == null || name.isBlank()) {
      return Outcome.refused(
          "nobody's name was given, and decisions about patients' photographs need one",
          "add --by \"Your Name\", or set VESTIBULE_BY");
    }
    return Outcome.done(name.strip());
  }
}
