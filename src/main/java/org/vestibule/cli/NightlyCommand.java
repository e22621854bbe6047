package org.vestibule.cli;

import java.io.IOException;
import org.vestibule.flow.Practice;
import org.vestibule.flow.night.Night;
import org.vestibule.flow.night.NightFiles;
import org.vestibule.flow.night.NightReport;
import org.vestibule.flow.night.NightWords;
import org.vestibule.flow.night.Pause;
import picocli.CommandLine.Command;

/** The run nobody watches. */
@Command(
    name = "nightly",
    description = {
      "Do a night's work: take in the inbox, read a share of the objects again, make the backup if",
      "the settings name a place for it.",
      "What was done stands in the home's folder night, and in how the command ends."
    })
final class NightlyCommand extends PersonCommand {

  NightlyCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  boolean mayBegin() {
    return true;
  }

  @Override
  ExitCode run(Practice practice, String by) throws IOException {
    NightFiles files = new NightFiles(practice.home());
    try {
      NightReport report = Night.run(practice, practice.settings().night(), by, Pause.SLEEP);
      ExitCode code = code(report.ending());
      files.write(report, code.number(), practice);
      NightWords.lines(report).forEach(line -> console().wrapped(0, line));
      return code;
    } catch (IOException | RuntimeException | OutOfMemoryError failure) {
      FailureWords words = FailureWords.of(failure);
      try {
        files.failed(
            practice.clock().instant(), failure.getClass().getSimpleName(), words.end().number());
      } catch (IOException alsoFailed) {
        failure.addSuppressed(alsoFailed);
      }
      throw failure;
    }
  }

  private static ExitCode code(NightReport.Ending ending) {
    return switch (ending) {
      case DONE -> ExitCode.DONE;
      case NEEDS_A_PERSON -> ExitCode.NEEDS_A_PERSON;
      case REFUSED -> ExitCode.REFUSED;
      case BUSY -> ExitCode.BUSY;
      case NO_BACKUP, MACHINE -> ExitCode.MACHINE;
      case DAMAGE -> ExitCode.DAMAGE;
    };
  }
}
