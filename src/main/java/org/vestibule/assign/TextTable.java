package org.vestibule.assign;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A list as practices have it (RFC 4180, and what spreadsheets make of it): any of three
 * separators, quoted fields that may span lines, empty columns at the end.
 *
 * @param source its text
 * @param headers as written
 * @param columns ours by position; null where a header is empty or unknown
 * @param rows that aren't blank
 * @param warnings recoverable oddities, each a sentence
 */
record TextTable(
    TableText source,
    List<String> headers,
    List<@Nullable Column> columns,
    List<TableRow> rows,
    List<String> warnings) {

  private static final int MOST_ROWS = 200_000;
  private static final ObjectReader LINES =
      new CsvMapper().readerFor(String[].class).with(CsvParser.Feature.WRAP_AS_ARRAY);

  static TextTable read(byte[] bytes, String name, List<Column> known) throws Refusal {
    TableText source = TableText.of(bytes, name);
    List<String[]> lines = lines(source, name);
    int head = 0;
    while (head < lines.size() && (isBlank(lines.get(head)) || isComment(lines.get(head)))) {
      head++;
    }
    if (head == lines.size()) {
      throw new Refusal(name + " is empty", "its first row must name the columns");
    }
    List<String> warnings = new ArrayList<>();
    if (source.charset().equals(TableText.WINDOWS)) {
      warnings.add(
          name + " is not UTF-8 and was read as Windows-1252; check names with special letters");
    }
    List<String> headers = List.of(lines.get(head));
    List<@Nullable Column> columns = columns(headers, name, known, warnings);
    List<TableRow> rows = new ArrayList<>();
    for (int at = head + 1; at < lines.size(); at++) {
      if (!isBlank(lines.get(at))) {
        rows.add(row(at + 1, lines.get(at), headers, columns));
      }
    }
    return new TextTable(source, headers, columns, List.copyOf(rows), List.copyOf(warnings));
  }

  boolean has(String column) {
    return columns.stream().anyMatch(found -> found != null && found.name().equals(column));
  }

  private static List<String[]> lines(TableText source, String name) throws Refusal {
    CsvSchema schema = CsvSchema.emptySchema().withColumnSeparator(source.separator());
    List<String[]> lines = new ArrayList<>();
    try (MappingIterator<String[]> cells = LINES.with(schema).readValues(source.text())) {
      while (cells.hasNextValue()) {
        if (lines.size() == MOST_ROWS) {
          throw new Refusal(name + " has more than " + MOST_ROWS + " rows", "split it");
        }
        lines.add(cells.nextValue());
      }
    } catch (JsonProcessingException e) {
      throw new Refusal(
          name + ", row " + (lines.size() + 1) + ": its quotation marks don't pair up",
          "put a field with quotation marks in quotation marks and double those inside it");
    } catch (IOException e) {
      throw new UncheckedIOException("reading text from memory failed", e);
    }
    return lines;
  }

  private static List<@Nullable Column> columns(
      List<String> headers, String name, List<Column> known, List<String> warnings) throws Refusal {
    List<@Nullable Column> columns = new ArrayList<>();
    for (String header : headers) {
      Column column =
          known.stream().filter(candidate -> candidate.isCalled(header)).findFirst().orElse(null);
      if (column != null && columns.contains(column)) {
        throw new Refusal(
            name
                + " has the column "
                + column.name()
                + " twice (columns "
                + (columns.indexOf(column) + 1)
                + " and "
                + (columns.size() + 1)
                + ")",
            "keep the right one and remove or rename the other");
      }
      if (column == null && !header.isBlank()) {
        warnings.add(
            name
                + ": column "
                + (columns.size() + 1)
                + " has a heading that is not known and was not read; known are "
                + names(known));
      }
      columns.add(column);
    }
    for (Column column : known) {
      if (column.required() && !columns.contains(column)) {
        throw new Refusal(
            name + " has no column " + column.name(),
            "its first row must name the columns: " + names(known));
      }
    }
    return columns;
  }

  private static TableRow row(
      int number, String[] cells, List<String> headers, List<@Nullable Column> columns)
      throws Refusal {
    Map<String, String> named = new HashMap<>();
    for (int at = 0; at < cells.length; at++) {
      String cell = cells[at].strip();
      boolean headed = at < headers.size() && !headers.get(at).isBlank();
      if (!headed && !cell.isEmpty()) {
        throw new Refusal(
            "row " + number + " has something in its column " + (at + 1) + ", which has no heading",
            "check the row for a separator inside a field; such a field needs quotation marks");
      }
      Column column = headed ? columns.get(at) : null;
      if (column != null) {
        named.put(column.name(), cell);
      }
    }
    return new TableRow(number, named);
  }

  private static String names(List<Column> known) {
    return String.join(", ", known.stream().map(Column::name).toList());
  }

  private static boolean isBlank(String[] cells) {
    for (String cell : cells) {
      if (!cell.isBlank()) {
        return false;
      }
    }
    return true;
  }

  private static boolean isComment(String[] cells) {
    return cells[0].startsWith("#");
  }
}
