package org.vestibule.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.util.List;
import org.vestibule.base.WholeFile;
import org.vestibule.card.CardSheet;

/** Writes a sheet of cards and says so. */
final class CardFile {

  private CardFile() {}

  /** Writes the sheet; nothing is overwritten. */
  static ExitCode write(Console console, CardSheet sheet, int cards, Path file) throws IOException {
    try {
      WholeFile.writeNew(file, sheet.pdf());
    } catch (FileAlreadyExistsException e) {
      console.complain("vestibule: " + file.getFileName() + " is already there.");
      console.complain("  What to do: name another file with --out; nothing was overwritten.");
      return ExitCode.REFUSED;
    }
    console.say("Wrote " + Counted.of(cards, "card") + " to " + file.getFileName() + ".");
    List<String> warnings = sheet.warnings();
    warnings.forEach(warning -> console.complain("vestibule: " + warning + "."));
    return warnings.isEmpty() ? ExitCode.DONE : ExitCode.NEEDS_A_PERSON;
  }
}
