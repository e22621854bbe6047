package org.vestibule.flow.delivering;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.forward.Courier;
import org.vestibule.forward.DestinationRules;
import org.vestibule.store.PhotoRef;
import org.vestibule.store.ledger.Deliveries;
import org.vestibule.store.ledger.DeliveryChange;
import org.vestibule.store.ledger.DeliveryRow;
import org.vestibule.store.ledger.DeliveryState;

/** What is where, and what a person does about what came to an end. */
public final class Undelivered {

  /**
   * One object at one destination, for people.
   *
   * @param number of the delivery
   * @param id the photograph's
   * @param what {@code photograph} or {@code note}
   * @param state in words
   * @param reason what the last answer says; may be empty
   * @param advice what to do; empty if nothing needs to be done
   * @param due when it goes on by itself; empty if it does not
   */
  public record Line(
      long number,
      String destination,
      String id,
      String what,
      String state,
      String reason,
      String advice,
      Optional<Instant> due,
      Map<String, String> changed) {

    public Line {
      changed = Map.copyOf(changed);
    }
  }

  private final Practice practice;
  private final Deliveries deliveries;

  public Undelivered(Practice practice) {
    this.practice = practice;
    this.deliveries = practice.store().ledger().deliveries();
  }

  /** Everything that needs a person, or stands behind such a thing; at most so many each. */
  public List<Line> all(int most) {
    List<Line> lines = new ArrayList<>();
    for (DestinationRules to : practice.settings().forward().destinations()) {
      Courier.follow(deliveries, to.name());
      deliveries.ended(to.name(), most).forEach(row -> lines.add(line(row)));
    }
    return lines;
  }

  /** How many objects need a person at each archive, those without any left out; reads alone. */
  public Map<String, Integer> deadEnds() {
    Map<String, Integer> ended = new LinkedHashMap<>();
    for (DestinationRules to : practice.settings().forward().destinations()) {
      int count = deliveries.deadEnds(to.name());
      if (count > 0) {
        ended.put(to.name(), count);
      }
    }
    return ended;
  }

  /** Where the objects of one photograph are. */
  public Outcome<List<Line>> of(String id) {
    practice
        .settings()
        .forward()
        .destinations()
        .forEach(to -> Courier.follow(deliveries, to.name()));
    return practice
        .store()
        .ids()
        .find(id)
        .map(photo -> deliveries.of(photo.hash()).stream().map(this::line).toList());
  }

  /**
   * Where the objects of one photograph are that count, one line for each object and archive; reads
   * alone, so that an archive that was added since stands there only after the next delivery.
   */
  public List<String> standing(String id) {
    return practice.store().ids().find(id) instanceof Done<PhotoRef> photo
        ? deliveries.of(photo.value().hash()).stream()
            .filter(row -> !row.takenBack() && row.state() != DeliveryState.WITHDRAWN)
            .filter(row -> !row.note() || row.state() != DeliveryState.CONFIRMED)
            .map(
                row ->
                    row.destination()
                        + ": "
                        + (row.note() ? "note " : "")
                        + DeliveryWords.state(row)
                        + (row.words().isEmpty() ? "" : " (" + row.words() + ")"))
            .toList()
        : List.of();
  }

  /** Tries again what came to an end: of one photograph, or everything if none is named. */
  public Outcome<Integer> again(Optional<String> id, Optional<String> only, String by, String why) {
    Outcome<List<DeliveryRow>> rows = ended(id, only);
    return rows.map(
        all -> (int) all.stream().filter(row -> deliveries.again(row.number(), by, why)).count());
  }

  /**
   * A person says that the archive's people took the old object out by hand, so that what stands
   * behind the note may go.
   */
  public Outcome<Integer> takenOutByHand(String id, String destination, String by, String why) {
    Outcome<List<DeliveryRow>> rows = ended(Optional.of(id), Optional.of(destination));
    if (!(rows instanceof Done<List<DeliveryRow>> found)) {
      return ((Refused<List<DeliveryRow>>) rows).as();
    }
    List<DeliveryChange> changes =
        found.value().stream().filter(DeliveryRow::note).map(row -> byHand(row, why)).toList();
    if (changes.isEmpty()) {
      return Outcome.refused(
          "no note about this photograph came to an end at \"" + destination + "\"",
          "\"vestibule forward list " + id + "\" says where it stands");
    }
    deliveries.record(changes, by);
    return Outcome.done(changes.size());
  }

  private static DeliveryChange byHand(DeliveryRow row, String why) {
    return new DeliveryChange(
        row.number(),
        DeliveryState.CONFIRMED,
        row.attempts(),
        row.asks(),
        row.perhapsThere(),
        null,
        row.status(),
        "taken out by hand: " + why,
        null,
        Map.of());
  }

  private Outcome<List<DeliveryRow>> ended(Optional<String> id, Optional<String> only) {
    List<String> names =
        practice.settings().forward().destinations().stream()
            .map(DestinationRules::name)
            .filter(name -> only.isEmpty() || name.equals(only.get()))
            .toList();
    if (names.isEmpty()) {
      return Outcome.refused(
          "there is no such destination in the settings",
          "\"vestibule forward list\" says which there are");
    }
    if (id.isEmpty()) {
      return Outcome.done(
          names.stream()
              .flatMap(name -> deliveries.ended(name, Integer.MAX_VALUE).stream())
              .filter(DeliveryRow::isDeadEnd)
              .toList());
    }
    return practice
        .store()
        .ids()
        .find(id.get())
        .map((PhotoRef photo) -> deliveries.of(photo.hash()))
        .map(
            rows ->
                rows.stream()
                    .filter(row -> names.contains(row.destination()) && row.isDeadEnd())
                    .toList());
  }

  private Line line(DeliveryRow row) {
    Map<String, String> changed = new TreeMap<>();
    deliveries
        .coerced(row.number())
        .forEach((keyword, values) -> changed.put(keyword, values.theirs()));
    return new Line(
        row.number(),
        row.destination(),
        practice.store().ids().of(row.hash()),
        row.note() ? "note on filing " + row.revision() : "filing " + row.revision(),
        DeliveryWords.state(row),
        row.words(),
        DeliveryWords.advice(row),
        Optional.ofNullable(row.dueAt()),
        changed);
  }
}
