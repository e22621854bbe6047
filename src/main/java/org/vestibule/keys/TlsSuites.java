package org.vestibule.keys;

import java.util.List;
import org.vestibule.base.ResourceTable;

/** The protocols and suites that are offered and accepted, from {@code tls-suites.csv}. */
final class TlsSuites {

  private static final List<String[]> ROWS = rows();

  private TlsSuites() {}

  static String[] names() {
    return ROWS.stream().map(row -> row[1]).toArray(String[]::new);
  }

  static String[] protocols() {
    return ROWS.stream().map(row -> row[0]).distinct().toArray(String[]::new);
  }

  private static List<String[]> rows() {
    return ResourceTable.lines(TlsSuites.class, "tls-suites.csv").stream()
        .map(line -> line.split(",", -1))
        .toList();
  }
}
