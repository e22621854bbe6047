package org.vestibule.assign;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Recognises teeth that a spreadsheet turned into a date: {@code 11-12} shown as {@code 12. Nov},
 * {@code 1.6} as {@code 01.Jun} (common practice, no source). Never guesses them back.
 */
final class SpreadsheetDates {

  /** First letters of each month in the languages spreadsheets are run in; longest first. */
  private static final List<String> MONTHS =
      List.of(
          "january|januar|janvier|gennaio|enero|januari|janv|jan|ene|gen|jän",
          "february|februar|février|febbraio|febrero|februari|févr|feb|fév",
          "march|märz|mars|marzo|maart|mär|mar|mrz|mrt",
          "april|avril|aprile|abril|apr|avr|abr",
          "may|mai|maggio|mayo|maj|mei|mag",
          "june|juni|juin|giugno|junio|jun|giu",
          "july|juli|juillet|luglio|julio|juil|jul|lug",
          "august|août|agosto|augustus|augusti|aug|ago|aoû",
          "september|septembre|settembre|septiembre|sept|sep|set",
          "october|oktober|octobre|ottobre|octubre|oct|okt|ott",
          "november|novembre|noviembre|nov",
          "december|dezember|décembre|dicembre|diciembre|desember|dec|dez|déc|dic|des");

  private static final String MONTH = "(" + String.join("|", MONTHS) + ")\\.?";
  private static final String GAP = "[\\s./-]*";
  private static final String TIME = "(?:[ T]\\d{1,2}:\\d{2}(?::\\d{2})?)?";
  private static final Pattern NUMBER_FIRST =
      Pattern.compile("(\\d{1,2})\\.?" + GAP + MONTH + "(?:" + GAP + "\\d{2,4})?" + TIME);
  private static final Pattern NAME_FIRST =
      Pattern.compile(MONTH + GAP + "(\\d{1,2})(?:,?" + GAP + "\\d{4})?" + TIME);
  private static final Pattern YEAR_FIRST =
      Pattern.compile("\\d{4}[-./](\\d{1,2})[-./](\\d{1,2})" + TIME);
  private static final Pattern YEAR_LAST =
      Pattern.compile("(\\d{1,2})[-./](\\d{1,2})[-./](?:19|20)\\d{2}" + TIME);
  private static final Pattern SERIAL = Pattern.compile("[2-7]\\d{4}");

  private SpreadsheetDates() {}

  /** What the teeth probably were if this is a date, such as {@code 11-12 or 12-11}. */
  static Optional<String> probably(String cell) {
    String text = cell.trim().toLowerCase(Locale.ROOT);
    Matcher matcher = NUMBER_FIRST.matcher(text);
    if (matcher.matches()) {
      return Optional.of(either(number(matcher.group(1)), month(matcher.group(2))));
    }
    matcher = NAME_FIRST.matcher(text);
    if (matcher.matches()) {
      return Optional.of(either(month(matcher.group(1)), number(matcher.group(2))));
    }
    for (Pattern pattern : List.of(YEAR_FIRST, YEAR_LAST)) {
      matcher = pattern.matcher(text);
      if (matcher.matches()) {
        return Optional.of(either(number(matcher.group(1)), number(matcher.group(2))));
      }
    }
    return SERIAL.matcher(text).matches()
        ? Optional.of("two numbers with a dot or hyphen between them")
        : Optional.empty();
  }

  private static String either(int one, int other) {
    Set<String> readings = new LinkedHashSet<>();
    String mark = one <= 8 && other <= 8 ? "." : "-";
    readings.add(Math.min(one, other) + mark + Math.max(one, other));
    readings.add(Math.max(one, other) + mark + Math.min(one, other));
    return String.join(" or ", readings);
  }

  private static int number(String digits) {
    return Integer.parseInt(digits);
  }

  private static int month(String name) {
    for (int at = 0; at < MONTHS.size(); at++) {
      if (List.of(MONTHS.get(at).split("\\|", -1)).contains(name)) {
        return at + 1;
      }
    }
    throw new IllegalStateException("a month that matched is not listed");
  }
}
