package org.vestibule.dental;

import java.util.ArrayList;
import java.util.List;
import org.vestibule.base.Outcome;

/** Splits one line of a table into its fields (RFC 4180 quoting, within one line). */
final class CsvLine {

  private CsvLine() {}

  static Outcome<List<String>> split(String line, char separator, int lineNumber) {
    List<String> fields = new ArrayList<>();
    StringBuilder field = new StringBuilder();
    boolean quoted = false;
    for (int at = 0; at < line.length(); at++) {
      char c = line.charAt(at);
      if (quoted && c == '"' && at + 1 < line.length() && line.charAt(at + 1) == '"') {
        field.append('"');
        at++;
      } else if (c == '"') {
        quoted = !quoted;
      } else if (c == separator && !quoted) {
        fields.add(field.toString().trim());
        field.setLength(0);
      } else {
        field.append(c);
      }
    }
    if (quoted) {
      return Outcome.refused(
          "line " + lineNumber + " has a quote that is never closed", "close it on the same line");
    }
    fields.add(field.toString().trim());
    return Outcome.done(List.copyOf(fields));
  }
}
