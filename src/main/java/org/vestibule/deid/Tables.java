package org.vestibule.deid;

import java.util.List;
import org.vestibule.base.ResourceTable;

/** Reads this room's resource tables: line one names the source, line two the columns. */
final class Tables {

  private Tables() {}

  /** The fields of each row; only the last may hold a comma. */
  static List<String[]> read(String resource, int columns) {
    return ResourceTable.lines(Tables.class, resource).stream()
        .map(line -> line.split(",", columns))
        .toList();
  }
}
