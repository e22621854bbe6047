package org.vestibule.dicom.net;

import java.util.List;
import java.util.function.Predicate;
import org.vestibule.base.Outcome;

/** What status and failure codes mean, from {@code statuses.csv}. */
final class Statuses {

  static final String STORE = "store";
  static final String FIND = "find";
  static final String OTHER = "all";

  static final int SUCCESS = 0x0000;
  static final int PROCESSING_FAILURE = 0x0110;
  static final int INVALID_ARGUMENT = 0x0115;
  static final int SOP_CLASS_NOT_SUPPORTED = 0x0122;
  static final int UNRECOGNIZED_OPERATION = 0x0211;

  private record Row(
      String service, int first, int last, Answer.Kind kind, boolean again, String words) {}

  /** What nearly every answer is; the table is read when another one comes. */
  private static final Answer DONE =
      new Answer(Answer.Kind.SUCCESS, SUCCESS, "done", false, "", List.of());

  private Statuses() {}

  /** What a report of storage commitment is answered with (PS3.7 10.1.1.1.8). */
  static int ofReport(Outcome<CommitmentReport> read, Predicate<CommitmentReport> keeps) {
    if (read instanceof Outcome.Done<CommitmentReport> done) {
      return keeps.test(done.value()) ? SUCCESS : INVALID_ARGUMENT;
    }
    return PROCESSING_FAILURE;
  }

  static Answer read(String service, CommandSet answer) {
    int status = answer.number(CommandSet.STATUS);
    if (status == SUCCESS) {
      return DONE;
    }
    return of(service, status, answer.text(CommandSet.ERROR_COMMENT), answer.offending());
  }

  /** An answer with this status that nobody gave, or a failure reason. */
  static Answer of(String service, int status) {
    return of(service, status, "", List.of());
  }

  private static Answer of(String service, int status, String comment, List<String> offending) {
    Row row = Table.row(service, status);
    return new Answer(row.kind(), status, row.words(), row.again(), comment, offending);
  }

  /** Read at its first use. */
  private static final class Table {

    private static final int HEX = 16;

    private static final List<Row> ROWS =
        Rows.of("statuses.csv").stream()
            .map(
                f ->
                    new Row(
                        f.get(0),
                        Integer.parseInt(f.get(1), HEX),
                        Integer.parseInt(f.get(2), HEX),
                        Answer.Kind.valueOf(f.get(3)),
                        f.get(4).equals("yes"),
                        f.get(5)))
            .toList();

    private static final Row UNKNOWN =
        new Row(OTHER, 0, 0xFFFF, Answer.Kind.FAILURE, true, "answered with an unknown status");

    private static Row row(String service, int status) {
      for (Row row : ROWS) {
        boolean fits = row.service().equals(service) || row.service().equals(OTHER);
        if (fits && row.first() <= status && status <= row.last()) {
          return row;
        }
      }
      return UNKNOWN;
    }
  }
}
