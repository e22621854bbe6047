package org.vestibule.assign;

import java.util.List;
import java.util.regex.Pattern;

/**
 * Recognises numbers that a spreadsheet damaged: leading zeros lost, or written as 1.23E+05 (common
 * practice, no source).
 */
final class NumberDamage {

  private static final Pattern SCIENTIFIC = Pattern.compile("\\d+(?:[.,]\\d+)?[eE][+-]?\\d+");
  private static final Pattern DIGITS = Pattern.compile("\\d{1,63}");
  private static final Pattern AS_TEXT = Pattern.compile("=\"(.*)\"|'(.*)");
  private static final int ENOUGH = 3;

  private NumberDamage() {}

  /** A number without the marks by which a spreadsheet keeps it as text: ="00417" or '00417. */
  static String unmarked(String cell) {
    var matcher = AS_TEXT.matcher(cell);
    if (!matcher.matches()) {
      return cell;
    }
    String formula = matcher.group(1);
    return formula == null ? matcher.group(2).strip() : formula.strip();
  }

  /** Refuses the first row whose number is damaged. Marked numbers are taken as they are. */
  static void refuse(List<TableRow> rows, String column) throws Refusal {
    List<String> digits =
        rows.stream()
            .map(row -> unmarked(row.get(column)))
            .filter(cell -> DIGITS.matcher(cell).matches())
            .distinct()
            .toList();
    int padded =
        digits.stream()
            .filter(cell -> cell.startsWith("0"))
            .mapToInt(String::length)
            .max()
            .orElse(0);
    int widest = digits.stream().mapToInt(String::length).max().orElse(0);
    long wide = digits.stream().filter(cell -> cell.length() == widest).count();
    boolean oneWidth = wide >= ENOUGH && wide >= 2 * (digits.size() - wide);
    int expected = Math.max(padded, oneWidth ? widest : 0);
    refuseExponents(rows, column);
    for (TableRow row : rows) {
      refuseShort(row, column, expected);
    }
  }

  /** Refuses the first row whose number a spreadsheet wrote with an exponent. */
  static void refuseExponents(List<TableRow> rows, String column) throws Refusal {
    for (TableRow row : rows) {
      if (SCIENTIFIC.matcher(row.get(column)).matches()) {
        throw row.refusal(
            column,
            "a spreadsheet wrote this number with an exponent and lost its digits",
            "set the column's format to text, then enter the number again");
      }
    }
  }

  private static void refuseShort(TableRow row, String column, int expected) throws Refusal {
    String cell = row.get(column);
    if (DIGITS.matcher(cell).matches() && cell.length() < expected) {
      throw row.refusal(
          column,
          "the number has "
              + cell.length()
              + " digits where others in this list have "
              + expected
              + ": a spreadsheet probably dropped leading zeros",
          "set the column's format to text and enter all digits; if the number is right, put an"
              + " apostrophe before it");
    }
  }
}
