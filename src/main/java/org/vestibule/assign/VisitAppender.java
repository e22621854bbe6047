package org.vestibule.assign;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Adds one row to the bytes of a visit list, in the list's own columns, separator and charset. */
final class VisitAppender {

  private static final String NAME = "the visit list";
  private static final List<String> NEW_HEADER =
      List.of(
          "visit",
          "patient id",
          "issuer",
          "name",
          "birth date",
          "sex",
          "start",
          "end",
          "accession number",
          "referrer",
          "dentist",
          "study uid");

  private VisitAppender() {}

  static byte[] append(byte[] list, VisitWords words) throws Refusal {
    Map<String, String> said = new HashMap<>(words.byColumn());
    for (String cell : said.values()) {
      if (cell.chars().anyMatch(Character::isISOControl)) {
        throw new Refusal("a visit can't hold line breaks", "enter each field on one line");
      }
    }
    if (new String(list, StandardCharsets.ISO_8859_1).isBlank()) {
      String header = String.join(",", NEW_HEADER);
      String row =
          NEW_HEADER.stream()
              .map(column -> quoted(said.getOrDefault(column, "")))
              .collect(Collectors.joining(","));
      return (header + "\r\n" + row + "\r\n").getBytes(StandardCharsets.UTF_8);
    }
    TextTable table = TextTable.read(list, NAME, VisitReader.COLUMNS);
    for (Map.Entry<String, String> cell : said.entrySet()) {
      if (!cell.getValue().isEmpty() && !table.has(cell.getKey())) {
        throw new Refusal(
            NAME + " has no column " + cell.getKey() + " for what was said",
            "add the column to the list's first row, or leave it out");
      }
    }
    return joined(list, table, row(table, said));
  }

  private static String row(TextTable table, Map<String, String> said) {
    StringBuilder row = new StringBuilder();
    for (@Nullable Column column : table.columns()) {
      row.append(row.length() == 0 ? "" : table.source().separator());
      row.append(column == null ? "\"\"" : quoted(said.getOrDefault(column.name(), "")));
    }
    return row.toString();
  }

  private static byte[] joined(byte[] list, TextTable table, String row) throws Refusal {
    TableText source = table.source();
    String text = source.text();
    String line = text.contains("\r\n") ? "\r\n" : "\n";
    String addition = (text.endsWith("\n") ? "" : line) + row + line;
    if (!source.charset().newEncoder().canEncode(addition)) {
      throw new Refusal(
          NAME + " is saved as " + source.charset().name() + ", which lacks a letter of this visit",
          "save the list as CSV (UTF-8), then add the visit again");
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(list);
    out.writeBytes(addition.getBytes(source.charset()));
    return out.toByteArray();
  }

  private static String quoted(String cell) {
    return "\"" + cell.replace("\"", "\"\"") + "\"";
  }
}
