package org.vestibule.cli;

import java.io.IOException;
import java.time.LocalDateTime;
import java.util.List;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.KeptPhoto;
import org.vestibule.flow.PhotoHistory;
import org.vestibule.flow.PhotoWords;
import org.vestibule.flow.Practice;
import org.vestibule.flow.delivering.Undelivered;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Prints a filed photograph's facts in words. */
@Command(name = "show", description = "Say in words what is recorded about a filed photograph.")
final class ShowCommand extends PracticeCommand {

  @Parameters(
      paramLabel = "ID",
      description = "The photograph, as find prints it; ID-frame for the frame beside a crop.")
  private String id = "";

  @Option(
      names = "--history",
      description = "Say who decided what about it, when, and on what that rested.")
  private boolean history;

  ShowCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice) throws IOException {
    return history ? history(practice) : facts(practice);
  }

  private ExitCode history(Practice practice) {
    Outcome<List<PhotoHistory.Step>> steps = new PhotoHistory(practice).of(id);
    if (steps instanceof Refused<List<PhotoHistory.Step>> refused) {
      return refuse(refused);
    }
    for (PhotoHistory.Step step : steps.orThrow()) {
      console()
          .wrapped(
              0,
              Times.words(LocalDateTime.ofInstant(step.at(), practice.settings().zone()))
                  + "  "
                  + step.who()
                  + "  "
                  + step.what()
                  + ".");
      step.because().forEach(fact -> console().wrapped(4, fact + "."));
    }
    if (steps.orThrow().isEmpty()) {
      console().say("Nobody has decided anything about this photograph yet.");
    }
    return ExitCode.DONE;
  }

  private ExitCode facts(Practice practice) throws IOException {
    Outcome<List<PhotoWords.Line>> facts = new KeptPhoto(practice).words(id);
    if (facts instanceof Refused<List<PhotoWords.Line>> refused) {
      return refuse(refused);
    }
    practice.audit().looked(practice.store().ids().find(id).orThrow().hash(), "");
    Table table = new Table("Photograph", id);
    for (PhotoWords.Line line : facts.orThrow()) {
      table.row(line.label(), line.value());
    }
    for (String delivered : new Undelivered(practice).standing(id)) {
      table.row("Archive", delivered);
    }
    table.lines(0).forEach(console()::say);
    return ExitCode.DONE;
  }
}
