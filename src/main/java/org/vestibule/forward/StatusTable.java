package org.vestibule.forward;

import java.util.List;
import java.util.Locale;
import org.vestibule.base.ResourceTable;

/** A table of status numbers by range: what each does to a delivery, and in words. */
final class StatusTable {

  /** PS3.4 table B.2-1 and PS3.7 annex C. */
  static final StatusTable STORE = new StatusTable("store-status.csv", 16);

  /** PS3.3 C.14.1.1. */
  static final StatusTable COMMITMENT = new StatusTable("commitment-reasons.csv", 16);

  /** RFC 9110 section 15 and PS3.18 10.5.3. */
  static final StatusTable HTTP = new StatusTable("http-status.csv", 10);

  /** What a status does to a delivery. */
  enum Effect {
    ACCEPTED,
    /** The archive has not stored it, because it has it: it is asked what it has. */
    THERE,
    REFUSED,
    LATER,
    STOP
  }

  record Meaning(Effect effect, String words) {}

  private record Line(int first, int last, Meaning meaning) {}

  private final List<Line> lines;

  private StatusTable(String name, int radix) {
    lines =
        ResourceTable.lines(StatusTable.class, name).stream()
            .map(text -> line(text, radix))
            .toList();
  }

  private static Line line(String text, int radix) {
    String[] cells = text.split(",", 4);
    return new Line(
        Integer.parseInt(cells[0], radix),
        Integer.parseInt(cells[1], radix),
        new Meaning(Effect.valueOf(cells[2].toUpperCase(Locale.ROOT)), cells[3]));
  }

  /** The meaning of a number; one that no table has is a failure of this object that may pass. */
  Meaning meaning(int status) {
    return lines.stream()
        .filter(line -> line.first() <= status && status <= line.last())
        .findFirst()
        .map(Line::meaning)
        .orElse(new Meaning(Effect.LATER, "not stored, for a reason that no table has"));
  }
}
