package org.vestibule.search;

import java.time.LocalDate;

/**
 * Days from the first to the last.
 *
 * @param first first day
 * @param last last day
 * @param yearGuessed true if the year was not said, but is the latest that fits
 * @param tokens how many words said it
 */
record Span(LocalDate first, LocalDate last, boolean yearGuessed, int tokens) {

  static Span of(LocalDate first, LocalDate last, int tokens) {
    return new Span(first, last, false, tokens);
  }

  static Span day(LocalDate day, int tokens) {
    return of(day, day, tokens);
  }

  /** The same a year later. */
  Span nextYear() {
    return new Span(first.plusYears(1), last.plusDays(1).plusYears(1).minusDays(1), true, tokens);
  }
}
