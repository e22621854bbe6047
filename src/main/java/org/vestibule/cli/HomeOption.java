package org.vestibule.cli;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Where the practice lives; every command that touches the record has it. */
final class HomeOption {

  @Option(
      names = "--home",
      paramLabel = "FOLDER",
      description =
          "The practice's home folder. Otherwise VESTIBULE_HOME, otherwise \"vestibule\" in your own"
              + " home folder.")
  private @Nullable String home;

  @Mixin TraceOption trace = new TraceOption();

  Path in(Surroundings surroundings) {
    String fromEnvironment = surroundings.environment().get("VESTIBULE_HOME");
    if (home != null) {
      return surroundings.path(home);
    }
    if (fromEnvironment != null && !fromEnvironment.isBlank()) {
      return surroundings.path(fromEnvironment);
    }
    String own = surroundings.environment().getOrDefault("HOME", "");
    if (own.isBlank()) {
      own = surroundings.environment().getOrDefault("USERPROFILE", "");
    }
    return surroundings.path(own).resolve("vestibule");
  }
}
