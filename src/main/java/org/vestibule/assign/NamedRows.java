package org.vestibule.assign;

import java.util.List;
import java.util.stream.Stream;
import org.vestibule.base.Outcome;

/**
 * The rows of a list whose columns have the names that we give them, read as every list of a
 * practice is: any of three separators, UTF-8 or what a spreadsheet makes of it. A heading that
 * isn't known is refused, since what stands below it would be lost.
 */
public final class NamedRows {

  /** One row; its number as a spreadsheet counts it, the headings being row 1. */
  public static final class Row {

    private final TableRow row;

    private Row(TableRow row) {
      this.row = row;
    }

    public int number() {
      return row.number();
    }

    /** The cell without spaces at its ends; empty where it is blank or its column is missing. */
    public String cell(String column) {
      return row.get(column);
    }
  }

  private NamedRows() {}

  /**
   * Reads a list.
   *
   * @param name of the file, for messages
   * @param required the column without which a list is of no use
   * @param others columns that may be left out
   */
  public static Outcome<List<Row>> read(
      byte[] bytes, String name, String required, List<String> others) {
    List<Column> known =
        Stream.concat(
                Stream.of(Column.required(required)),
                others.stream().map(column -> Column.optional(column)))
            .toList();
    try {
      TextTable table = TextTable.read(bytes, name, known);
      for (int at = 0; at < table.headers().size(); at++) {
        if (table.columns().get(at) == null && !table.headers().get(at).isBlank()) {
          return Outcome.refused(
              name + ": column " + (at + 1) + " has a heading that is not known",
              "name the columns " + String.join(", ", known.stream().map(Column::name).toList()));
        }
      }
      return Outcome.done(table.rows().stream().map(Row::new).toList());
    } catch (Refusal refusal) {
      return Outcome.refused(refusal.reason(), refusal.advice());
    }
  }
}
