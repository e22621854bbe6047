package org.vestibule.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Settings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** A command that works in a practice's home folder. */
@Command(mixinStandardHelpOptions = true, sortOptions = false)
abstract class PracticeCommand implements Callable<Integer> {

  private final Surroundings surroundings;

  @Mixin private HomeOption home = new HomeOption();

  PracticeCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  /** What the command does, once the practice is open. */
  abstract ExitCode run(Practice practice) throws IOException;

  /** True if the command may make the home folder of a new practice. */
  boolean mayBegin() {
    return false;
  }

  /** True if the command changes nothing, so that a practice that is not begun stays so. */
  boolean leavesNoTrace() {
    return false;
  }

  final Surroundings surroundings() {
    return surroundings;
  }

  final Console console() {
    return surroundings.console();
  }

  /** True if a person looks for a defect in the program. */
  final boolean traced() {
    return home.trace.trace;
  }

  final Path home() {
    return home.in(surroundings);
  }

  @Override
  public final Integer call() throws IOException {
    Outcome<Settings> settings = SettingsFile.read(home(), surroundings.zone());
    if (settings instanceof Refused<Settings> refused) {
      complain(refused);
      return ExitCode.WRONG_USE.number();
    }
    if (leavesNoTrace() && !Practice.isBegun(home())) {
      try (PassingFolder passing = PassingFolder.make()) {
        return call(passing.path(), settings.orThrow());
      }
    }
    return call(home(), settings.orThrow());
  }

  private int call(Path store, Settings settings) throws IOException {
    Outcome<Practice> opened =
        Practice.open(store, settings, surroundings.clock(), mayBegin() || leavesNoTrace());
    if (opened instanceof Done<Practice> done) {
      try (Practice practice = done.value()) {
        return run(practice).number();
      }
    }
    return refuse((Refused<Practice>) opened).number();
  }

  /** Says a refusal in words: what was found, and what to do. */
  final void complain(Refused<?> refused) {
    console().complain("vestibule: " + refused.reason() + ".");
    console().complain("  What to do: " + Ended.of(refused.advice()));
  }

  /** Says a refusal and ends with the exit code for it. */
  final ExitCode refuse(Refused<?> refused) {
    complain(refused);
    return ExitCode.of(refused.kind());
  }
}
