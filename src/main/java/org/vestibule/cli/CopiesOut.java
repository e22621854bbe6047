package org.vestibule.cli;

import java.util.List;
import org.vestibule.base.Outcome.Done;
import org.vestibule.flow.Practice;
import org.vestibule.store.PhotoRef;
import org.vestibule.store.ledger.ReleaseRow;

/** Tells of copies that are out of the house. */
final class CopiesOut {

  private CopiesOut() {}

  /** Lists those of a photograph that was corrected; whoever got them has to be told. */
  static ExitCode tell(Practice practice, String id, Console console) {
    if (!(practice.store().ids().find(id) instanceof Done<PhotoRef> photo)) {
      return ExitCode.DONE;
    }
    List<ReleaseRow> out = practice.store().ledger().releases().of(photo.value().hash());
    if (out.isEmpty()) {
      return ExitCode.DONE;
    }
    console.gap();
    list(
        out, "Copies of it left the house as it was filed before. Tell whoever has them:", console);
    return ExitCode.NEEDS_A_PERSON;
  }

  /** Lists them below a sentence, if there are any. */
  static void list(List<ReleaseRow> out, String sentence, Console console) {
    if (!out.isEmpty()) {
      console.say(sentence);
      ReleaseListCommand.table(out).lines(2).forEach(console::say);
    }
  }
}
