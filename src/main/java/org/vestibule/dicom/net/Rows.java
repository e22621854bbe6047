package org.vestibule.dicom.net;

import java.util.ArrayList;
import java.util.List;
import org.vestibule.base.ResourceTable;

/** The rows of one of this room's tables: fields between commas, quoted where they hold one. */
final class Rows {

  private Rows() {}

  static List<List<String>> of(String resource) {
    return ResourceTable.lines(Rows.class, resource).stream().map(Rows::fields).toList();
  }

  private static List<String> fields(String line) {
    List<String> fields = new ArrayList<>();
    StringBuilder field = new StringBuilder();
    boolean quoted = false;
    for (int at = 0; at < line.length(); at++) {
      char c = line.charAt(at);
      if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        fields.add(field.toString());
        field.setLength(0);
      } else {
        field.append(c);
      }
    }
    fields.add(field.toString());
    return fields;
  }
}
