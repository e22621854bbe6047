package org.vestibule.assign;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.Optional;
import java.util.regex.Pattern;
import org.vestibule.assign.WaitReason.Kind;
import org.vestibule.base.Outcome;
import org.vestibule.intake.CaptureFacts;

/**
 * The time that a row gives its photograph. Cameras use a name again once their counter has run
 * round, and a row may then meet another photograph of that name.
 */
final class RowTime {

  /** Spreadsheets drop seconds. */
  private static final Duration ROUNDING = Duration.ofMinutes(1);

  private static final Pattern OFFSET = Pattern.compile("\\s*(?:Z|[+-]\\d{2}:?\\d{2})$");

  private RowTime() {}

  /** Why the row is about another photograph than this one, if its time says so. */
  static Optional<WaitReason> problem(Manifest.Row row, CaptureFacts facts) {
    LocalDateTime taken = facts.takenAt();
    LocalDateTime written = read(row.taken()).orElse(null);
    if (taken == null
        || written == null
        || Duration.between(written, taken).abs().compareTo(ROUNDING) < 0) {
      return Optional.empty();
    }
    return Optional.of(
        new WaitReason(
            Kind.CONTRADICTION,
            "row "
                + row.number()
                + " of the manifest is about a photograph of this name that was taken at another"
                + " time",
            "check whether the name was used twice; correct the row, or empty its cell \"taken\""));
  }

  /** What is odd about the cell, if it can't be compared. */
  static Optional<String> oddity(Manifest.Row row) {
    return row.taken().isBlank() || read(row.taken()).isPresent()
        ? Optional.empty()
        : Optional.of(
            "row "
                + row.number()
                + ", column taken: this is no date and time that is understood, so it was not"
                + " compared with the photograph's own");
  }

  private static Optional<LocalDateTime> read(String cell) {
    CalendarText.Parts parts = CalendarText.parts(OFFSET.matcher(cell.strip()).replaceFirst(""));
    Outcome<LocalDateTime> read =
        CalendarText.date(parts.date())
            .then(date -> CalendarText.time(parts.time()).map(date::atTime));
    return read instanceof Outcome.Done<LocalDateTime> done
        ? Optional.of(done.value())
        : Optional.empty();
  }
}
