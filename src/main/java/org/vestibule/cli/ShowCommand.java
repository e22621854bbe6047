package org.vestibule.cli;

import java.io.IOException;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dicom.DataSet;
import org.vestibule.flow.KeptPhoto;
import org.vestibule.flow.PhotoWords;
import org.vestibule.flow.Practice;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Prints a filed photograph's facts in words. */
@Command(name = "show", description = "Say in words what is recorded about a filed photograph.")
final class ShowCommand extends PracticeCommand {

  @Parameters(
      paramLabel = "ID",
      description = "The photograph, as find prints it; ID-frame for the frame beside a crop.")
  private String id = "";

  ShowCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice) throws IOException {
    Outcome<DataSet> object = new KeptPhoto(practice).object(id);
    if (object instanceof Refused<DataSet> refused) {
      return refuse(refused);
    }
    Table table = new Table("Photograph", id);
    for (PhotoWords.Line line : PhotoWords.of(object.orThrow())) {
      table.row(line.label(), line.value());
    }
    table.lines(0).forEach(console()::say);
    return ExitCode.DONE;
  }
}
