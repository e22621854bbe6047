package org.vestibule.cli;

import java.util.ArrayList;
import java.util.List;

/** Rows in columns as wide as their widest cell, the last column unpadded. */
final class Table {

  private final List<List<String>> rows = new ArrayList<>();

  Table(String... head) {
    rows.add(List.of(head));
  }

  void row(String... cells) {
    rows.add(List.of(cells));
  }

  boolean isEmpty() {
    return rows.size() == 1;
  }

  List<String> lines(int indent) {
    int columns = rows.get(0).size();
    int[] widths = new int[columns];
    for (List<String> row : rows) {
      for (int i = 0; i < columns; i++) {
        widths[i] = Math.max(widths[i], length(row.get(i)));
      }
    }
    List<String> lines = new ArrayList<>();
    for (List<String> row : rows) {
      StringBuilder line = new StringBuilder(" ".repeat(indent));
      for (int i = 0; i < columns; i++) {
        line.append(row.get(i));
        if (i < columns - 1) {
          line.append(" ".repeat(widths[i] - length(row.get(i)) + 2));
        }
      }
      lines.add(line.toString().stripTrailing());
    }
    return lines;
  }

  private static int length(String text) {
    return text.codePointCount(0, text.length());
  }
}
