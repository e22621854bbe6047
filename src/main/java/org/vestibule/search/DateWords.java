package org.vestibule.search;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.dental.NearestWords;

/**
 * Dates in a question: {@code since march}, {@code between january and march}, {@code in 2025}.
 * What could be a date and something else is refused with both readings.
 */
final class DateWords {

  private static final Set<String> SINCE = Set.of("since", "from");
  private static final Set<String> UNTIL = Set.of("until", "till", "to");
  private static final Set<String> IN = Set.of("in", "on");
  private static final Set<String> NEEDS_A_DAY = Set.of("since", "until", "between");
  private static final Set<String> STAGES = Set.of("before", "during", "after");
  private static final Pattern LIKE_A_DATE =
      Pattern.compile("[0-9]{4}-[0-9]{1,2}|[0-9]{1,4}([-./])[0-9]{1,2}\\1[0-9]{1,4}");
  private static final String HOW = "write days as 2026-03-12, months as 2026-03 or march 2026";

  /**
   * Days that were said.
   *
   * @param tokens how many words say it
   */
  record Taken(@Nullable LocalDate from, @Nullable LocalDate to, int tokens) {

    /** How it is understood, in words that can be asked again. */
    String words() {
      if (from == null) {
        return "until " + to;
      }
      if (to == null) {
        return "since " + from;
      }
      return from.equals(to) ? from.toString() : from + " to " + to;
    }
  }

  private final List<String> tokens;
  private final SpanWords spans;

  DateWords(List<String> tokens, LocalDate today) {
    this.tokens = tokens;
    this.spans = new SpanWords(tokens, today);
  }

  /** The days said from this place on, or a refusal, or nothing if no days are said here. */
  Optional<Outcome<Taken>> at(int at) {
    String word = tokens.get(at);
    boolean opened = SINCE.contains(word) || IN.contains(word) || word.equals("between");
    int first = opened || UNTIL.contains(word) ? at + 1 : at;
    Optional<Outcome<Taken>> ambiguous =
        first < tokens.size() ? ambiguous(first) : Optional.empty();
    if (ambiguous.isPresent()) {
      return ambiguous;
    }
    Optional<Span> span = spans.at(first);
    if (span.isEmpty()) {
      return NEEDS_A_DAY.contains(word) ? Optional.of(noDay(at)) : Optional.empty();
    }
    int next = first + span.get().tokens();
    if (UNTIL.contains(word)) {
      return taken(null, span.get().last(), next - at);
    }
    Optional<Span> last = joins(word, next) ? spans.at(next + 1) : Optional.empty();
    if (last.isPresent()) {
      Span end = last.get();
      boolean wraps = end.yearGuessed() && end.last().isBefore(span.get().first());
      LocalDate to = (wraps ? end.nextYear() : end).last();
      return taken(span.get().first(), to, next + 1 + end.tokens() - at);
    }
    if (word.equals("between")) {
      return Optional.of(
          Outcome.refused(
              "\"between\" needs two days with \"and\" between them", "say between march and may"));
    }
    return taken(span.get().first(), SINCE.contains(word) ? null : span.get().last(), next - at);
  }

  /** True if the word at this place leads on to a last day. */
  private boolean joins(String opener, int at) {
    String word = at < tokens.size() ? tokens.get(at) : "";
    return opener.equals("between") ? word.equals("and") : UNTIL.contains(word) || word.equals("-");
  }

  private static Optional<Outcome<Taken>> taken(
      @Nullable LocalDate from, @Nullable LocalDate to, int tokens) {
    return Optional.of(Outcome.done(new Taken(from, to, tokens)));
  }

  private Outcome<Taken> noDay(int at) {
    String said = at + 1 < tokens.size() ? tokens.get(at + 1) : "";
    return said.isEmpty()
        ? Outcome.refused("after \"" + tokens.get(at) + "\" a day is expected", HOW)
        : Outcome.refused(
            "after \"" + tokens.get(at) + "\" a day is expected, but \"" + said + "\" is none",
            new NearestWords(SpanWords.vocabulary()).suggestion(said, HOW));
  }

  private Optional<Outcome<Taken>> ambiguous(int at) {
    String word = tokens.get(at);
    Optional<Span> stageDays = STAGES.contains(word) ? spans.at(at + 1) : Optional.empty();
    if (stageDays.isPresent()) {
      String days = String.join(" ", tokens.subList(at + 1, at + 1 + stageDays.get().tokens()));
      return Optional.of(
          Outcome.refused(
              "\"" + word + " " + days + "\" could be the stage, or say when it was taken",
              "for the stage say \"" + word + ", " + days + "\"; for days say since or until"));
    }
    String next = at + 1 < tokens.size() ? tokens.get(at + 1) : "";
    boolean dayFirst = SpanWords.isDayOfMonth(word) && SpanWords.isMonth(next);
    boolean monthFirst = SpanWords.isMonth(word) && SpanWords.isDayOfMonth(next);
    return dayFirst || monthFirst ? dayAndMonth(at, word + " " + next, dayFirst) : Optional.empty();
  }

  private Optional<Outcome<Taken>> dayAndMonth(int at, String both, boolean dayFirst) {
    if (at + 2 < tokens.size() && SpanWords.isYear(tokens.get(at + 2))) {
      return spans.at(at).isPresent()
          ? Optional.empty()
          : Optional.of(notADay(both + " " + tokens.get(at + 2)));
    }
    String number = tokens.get(dayFirst ? at : at + 1);
    String month = tokens.get(dayFirst ? at + 1 : at);
    return Optional.of(
        Outcome.refused(
            "\"" + both + "\" could be a day, or tooth " + number + " in " + month,
            "write the day as 2026-03-12; for the tooth say \"" + number + " in " + month + "\""));
  }

  private static <T> Outcome<T> notADay(String said) {
    return Outcome.refused("\"" + said + "\" is not a day of the calendar as written here", HOW);
  }

  /** Why a word that looks like a date is not read as one; nothing if it does not look so. */
  static <T> Optional<Outcome<T>> wrong(String word) {
    return LIKE_A_DATE.matcher(word).matches() ? Optional.of(notADay(word)) : Optional.empty();
  }
}
