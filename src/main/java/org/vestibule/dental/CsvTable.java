package org.vestibule.dental;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.vestibule.base.Outcome;

/**
 * A small table: lines that begin with {@code #} are comments, the first other line names the
 * columns. Fields are separated by the comma, semicolon or tab that the header uses and may be
 * quoted; a field never spans lines.
 */
record CsvTable(List<String> columns, List<Row> rows) {

  /** One row and the line it stands on, counted from 1. */
  record Row(int line, Map<String, String> fields) {
    /** The field, trimmed; empty where it is blank. */
    String get(String column) {
      String value = fields.get(column);
      if (value == null) {
        throw new IllegalStateException("no column named " + column);
      }
      return value;
    }

    /** The parts of a field that lists several things, separated by {@code |}. */
    List<String> list(String column) {
      return List.of(get(column).split("\\|", -1)).stream()
          .map(String::trim)
          .filter(part -> !part.isEmpty())
          .toList();
    }

    /** A refusal that names this row's line and the column. */
    <T> Outcome<T> refused(String column, String reason, String advice) {
      return Outcome.refused("line " + line + ", column " + column + ": " + reason, advice);
    }
  }

  private static final int LINE_LIMIT = 20_000;

  /** A table of this room, which must be sound. */
  static CsvTable ofResource(String name) {
    try (InputStream bytes = CsvTable.class.getResourceAsStream(name)) {
      if (bytes == null) {
        throw new IllegalStateException("the resource " + name + " is missing from the program");
      }
      return read(new InputStreamReader(bytes, StandardCharsets.UTF_8)).orThrow();
    } catch (IOException e) {
      throw new UncheckedIOException("the resource " + name + " can't be read", e);
    }
  }

  static Outcome<CsvTable> read(Reader source) throws IOException {
    List<String> lines = new ArrayList<>();
    BufferedReader reader = new BufferedReader(source);
    for (String line = reader.readLine(); line != null; line = reader.readLine()) {
      if (lines.size() == LINE_LIMIT) {
        return Outcome.refused(
            "the table has more than " + LINE_LIMIT + " lines", "split it, or check the file");
      }
      lines.add(lines.isEmpty() && line.startsWith("\uFEFF") ? line.substring(1) : line);
    }
    return parse(lines);
  }

  private static Outcome<CsvTable> parse(List<String> lines) {
    List<String> columns = List.of();
    char separator = ',';
    List<Row> rows = new ArrayList<>();
    for (int at = 0; at < lines.size(); at++) {
      String line = lines.get(at);
      if (line.isBlank() || line.startsWith("#")) {
        continue;
      }
      if (columns.isEmpty()) {
        separator = separatorOf(line);
      }
      Outcome<List<String>> split = CsvLine.split(line, separator, at + 1);
      if (!(split instanceof Outcome.Done<List<String>> fields)) {
        return ((Outcome.Refused<List<String>>) split).as();
      }
      if (columns.isEmpty()) {
        columns = fields.value();
      } else if (fields.value().size() != columns.size()) {
        return Outcome.refused(
            "line "
                + (at + 1)
                + " has "
                + fields.value().size()
                + " fields where the header has "
                + columns.size(),
            "give every column a field, and put fields that contain the separator in quotes");
      } else {
        rows.add(new Row(at + 1, byName(columns, fields.value())));
      }
    }
    return columns.isEmpty()
        ? Outcome.refused("the table is empty", "its first line must name the columns")
        : Outcome.done(new CsvTable(columns, List.copyOf(rows)));
  }

  private static char separatorOf(String header) {
    if (header.indexOf('\t') >= 0) {
      return '\t';
    }
    return header.indexOf(';') >= 0 ? ';' : ',';
  }

  private static Map<String, String> byName(List<String> columns, List<String> fields) {
    Map<String, String> named = new LinkedHashMap<>();
    for (int at = 0; at < columns.size(); at++) {
      named.put(columns.get(at), fields.get(at));
    }
    return named;
  }
}
