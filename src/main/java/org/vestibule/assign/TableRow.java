package org.vestibule.assign;

import java.util.Map;

/**
 * One row of a list.
 *
 * @param number as a spreadsheet counts it, the header being row 1
 * @param cells by the names of our columns, without spaces at their ends
 */
record TableRow(int number, Map<String, String> cells) {

  TableRow {
    cells = Map.copyOf(cells);
  }

  /** The cell; empty where it is blank or its column is missing. */
  String get(String column) {
    return cells.getOrDefault(column, "");
  }

  boolean isBlank() {
    return cells.values().stream().allMatch(String::isEmpty);
  }

  String place(String column) {
    return "row " + number + ", column " + column;
  }

  /** A refusal that names the place. */
  Refusal refusal(String column, String reason, String advice) {
    return new Refusal(place(column) + ": " + reason, advice);
  }
}
