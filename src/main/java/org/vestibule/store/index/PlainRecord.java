package org.vestibule.store.index;

import java.time.DateTimeException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Reads a description in the form in which {@link IndexRecordJson} writes nearly every one: its
 * fields in their order, nothing between them, nothing escaped. A page of answers has fifty, and
 * the library's reader, which understands any JSON, takes longer over them than the search. What is
 * not in the usual form is left to the library.
 */
final class PlainRecord {

  private static final int DECIMAL = 10;

  /** As many teeth as a mouth has. */
  private static final int MOST_NUMBERS = 32;

  private final String text;
  private int at;
  private boolean usual = true;

  private PlainRecord(String text) {
    this.text = text;
  }

  /** The description that the text holds; empty if it is not in the usual form. */
  static Optional<IndexRecord> read(String text) {
    if (text.indexOf('\\') >= 0 || !text.startsWith("{\"")) {
      return Optional.empty();
    }
    PlainRecord plain = new PlainRecord(text);
    try {
      IndexRecord record = plain.record();
      return plain.usual && plain.isAtEnd() ? Optional.of(record) : Optional.empty();
    } catch (IndexOutOfBoundsException | IllegalArgumentException | DateTimeException e) {
      // The library says what is wrong with it.
      return Optional.empty();
    }
  }

  private boolean isAtEnd() {
    return at == text.length() - 1 && text.charAt(at) == '}';
  }

  private IndexRecord record() {
    String hash = text("\"hash\":");
    String id = text("\"id\":");
    boolean filed = text("\"state\":").equals("filed");
    String object = text("\"object\":");
    String taken = text("\"taken\":");
    String device = text("\"device\":");
    String treatment = text("\"treatment\":");
    String note = text("\"note\":");
    List<String> advice = texts("\"advice\":");
    IndexRecord.Who who = who();
    return new IndexRecord(
        hash,
        id,
        filed,
        object.isEmpty() ? null : object,
        taken.isEmpty() ? null : IsoTime.dateTime(taken),
        who,
        shows(),
        device,
        treatment,
        note,
        advice);
  }

  private IndexRecord.Who who() {
    String patient = text("\"patient\":");
    String issuer = text("\"issuer\":");
    String name = text("\"name\":");
    String referrer = text("\"referrer\":");
    String dentist = text("\"dentist\":");
    String accession = text("\"accession\":");
    String visit = text("\"visit\":");
    String date = text("\"visitDate\":");
    return new IndexRecord.Who(
        patient,
        issuer,
        name,
        referrer,
        dentist,
        accession,
        visit,
        date.isEmpty() ? null : IsoTime.date(date));
  }

  private IndexRecord.Shows shows() {
    String view = text("\"view\":");
    String viewName = text("\"viewName\":");
    String teethWords = text("\"teethWords\":");
    List<Integer> teeth = numbers("\"teeth\":");
    List<String> occupants = texts("\"occupants\":");
    List<String> areas = texts("\"areas\":");
    UsualFrame usualFrame =
        new UsualFrame(
            numbers("\"segment\":"),
            numbers("\"quadrant\":"),
            numbers("\"arch\":"),
            numbers("\"mouth\":"));
    String mirror = text("\"mirror\":");
    String stage = text("\"stage\":");
    List<String> accessories = texts("\"accessories\":");
    return new IndexRecord.Shows(
        view,
        viewName,
        teethWords,
        teeth,
        occupants,
        areas,
        usualFrame,
        mirror,
        stage,
        accessories);
  }

  /** True if the field of this name comes next; then its value does. */
  private boolean comes(String name) {
    // Before each field stands the brace or a comma.
    if (!text.startsWith(name, at + 1)) {
      return false;
    }
    usual &= text.charAt(at) == (at == 0 ? '{' : ',');
    at += 1 + name.length();
    return true;
  }

  private String text(String name) {
    return comes(name) ? string() : "";
  }

  private String string() {
    int end = text.indexOf('"', at + 1);
    usual &= text.charAt(at) == '"';
    String value = text.substring(at + 1, end);
    at = end + 1;
    return value;
  }

  private List<String> texts(String name) {
    return comes(name) ? List.copyOf(values(this::string)) : List.of();
  }

  private List<Integer> numbers(String name) {
    return comes(name) ? List.copyOf(values(this::number)) : List.of();
  }

  private int number() {
    int end = text.indexOf('"', at + 1);
    usual &= text.charAt(at) == '"';
    int number = Integer.parseInt(text, at + 1, end, DECIMAL);
    at = end + 1;
    return number;
  }

  private <T> List<T> values(Supplier<T> next) {
    List<T> values = new ArrayList<>(MOST_NUMBERS);
    usual &= text.charAt(at) == '[';
    do {
      at++;
      values.add(next.get());
    } while (text.charAt(at) == ',');
    usual &= text.charAt(at) == ']';
    at++;
    return values;
  }
}
