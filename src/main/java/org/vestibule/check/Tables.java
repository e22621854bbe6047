package org.vestibule.check;

import java.util.List;
import org.vestibule.base.ResourceTable;

/**
 * Reads this room's resource tables: line one names the source, line two the columns; no value
 * holds a comma.
 */
final class Tables {

  private Tables() {}

  static List<String[]> read(String resource) {
    return ResourceTable.lines(Tables.class, resource).stream()
        .map(line -> line.split(",", -1))
        .toList();
  }
}
