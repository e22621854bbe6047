package org.vestibule.encode;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ResourceTable;
import org.vestibule.dental.Code;

/**
 * Of what kind the reason is for which an object no longer counts, as an archive is told it.
 *
 * @param word what a person types
 * @param title document title of the note (PS3.16 CID 7010)
 * @param modifier why the quality did not do (CID 7011); null for other titles
 * @param description one short sentence for whoever reads the note
 */
public record RejectionReason(
    String word, Code title, @Nullable Code modifier, String description) {

  /** Filed under a patient or visit that it does not belong to. */
  public static final String WRONG_VISIT = "wrong-visit";

  /** Side, view or teeth were stated wrongly. */
  public static final String WRONG_SIDE = "wrong-side";

  /** The most cautious one: nobody is to see the object any more. */
  public static final String UNSAFE = "unsafe";

  private static final String RESOURCE = "rejection-reasons.csv";
  private static final int COLUMNS = 6;

  private static final class Table {
    static final List<RejectionReason> ALL =
        ResourceTable.lines(RejectionReason.class, RESOURCE).stream()
            .map(RejectionReason::read)
            .toList();
  }

  /** All reasons there are, in the order of the table. */
  public static List<RejectionReason> all() {
    return Table.ALL;
  }

  /** The reason that this word stands for. */
  public static Optional<RejectionReason> of(String word) {
    return all().stream().filter(reason -> reason.word.equals(word)).findFirst();
  }

  private static RejectionReason read(String line) {
    String[] cells = line.split(",", -1);
    if (cells.length != COLUMNS) {
      throw new IllegalStateException(
          RESOURCE + " has a line of " + cells.length + " cells instead of " + COLUMNS);
    }
    Code modifier = cells[3].isEmpty() ? null : new Code("DCM", cells[3], cells[4]);
    return new RejectionReason(cells[0], new Code("DCM", cells[1], cells[2]), modifier, cells[5]);
  }
}
