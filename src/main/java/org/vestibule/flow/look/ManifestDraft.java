package org.vestibule.flow.look;

import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.vestibule.assign.PhotoFact;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.Photo;

/**
 * The manifest to be completed by a person: a CSV (RFC 4180, UTF-8 with a byte order mark, so that
 * spreadsheets read names rightly) with a line for each photograph and what is known filled in.
 */
final class ManifestDraft {

  private static final List<String> TO_COMPLETE =
      Stream.concat(
              Stream.of(PhotoFact.values())
                  .filter(fact -> fact != PhotoFact.SALVAGE)
                  .map(PhotoFact::word),
              Stream.of("by"))
          .toList();

  static final String HEADER = "file,taken," + String.join(",", TO_COMPLETE);

  private static final String BLANK_COLUMNS = ",".repeat(TO_COMPLETE.size());
  private static final String LINE_END = "\r\n";
  private static final String BYTE_ORDER_MARK = "\uFEFF";
  private static final DateTimeFormatter TAKEN =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss", Locale.ROOT);

  private ManifestDraft() {}

  static String of(List<Sitting> sittings) {
    StringBuilder out = new StringBuilder(BYTE_ORDER_MARK).append(HEADER).append(LINE_END);
    for (Sitting sitting : sittings) {
      for (Photo photo : sitting.photos()) {
        out.append(field(harmless(photo.arrival().name())))
            .append(',')
            .append(field(taken(photo.facts())))
            .append(BLANK_COLUMNS)
            .append(LINE_END);
      }
    }
    return out.toString();
  }

  private static String taken(CaptureFacts facts) {
    LocalDateTime taken = facts.takenAt();
    if (taken == null) {
      return "";
    }
    return TAKEN.format(taken) + (facts.offset() == null ? "" : facts.offset().getId());
  }

  /**
   * A name that a spreadsheet would take for a formula gets a dot and a slash in front, which names
   * the same file.
   */
  private static String harmless(String name) {
    return name.isEmpty() || "=+-@\t\r".indexOf(name.charAt(0)) < 0 ? name : "./" + name;
  }

  private static String field(String value) {
    boolean plain = value.chars().noneMatch(c -> c == ',' || c == '"' || c == ';' || c < ' ');
    return plain ? value : '"' + value.replace("\"", "\"\"") + '"';
  }
}
