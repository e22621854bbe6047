package org.vestibule.assign;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;
import org.vestibule.card.Card;
import org.vestibule.card.CardSighting;
import org.vestibule.card.ViewCard;
import org.vestibule.card.VisitCard;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.CaptureFactsBuilder;

/** An invented morning: three visits one after the other, their cards, and what a phone took. */
final class CardRoll {

  static final LocalDate DAY = LocalDate.of(2026, 3, 11);
  static final String VISITS =
      """
      visit,patient id,name,start,end
      VA,00417,"Ash, Ida",2026-03-11 09:00,09:30
      VB,00562,"Elm, Bo",2026-03-11 09:45,10:15
      VC,00900,"Oak, Una",2026-03-11 10:30,11:00
      """;

  private final List<Seen> seen = new ArrayList<>();
  private final Set<String> others = new HashSet<>();
  private final Map<String, String> names = new HashMap<>();
  private final Map<String, IssuedCard> issued = new HashMap<>();
  private SortingRules rules = SortingRules.STRICT;
  private VisitList visits = list(VISITS);
  private LocalDate day = DAY;
  private String folder = "";
  private String model = "P1";
  private int number = 2034;
  private boolean clockNames;
  private boolean edited;
  private @Nullable String nextName;
  private @Nullable ZoneOffset nextZone;

  CardRoll() {
    visits
        .visits()
        .forEach(visit -> issued.put(visit.key(), IssuedCard.of("t-" + visit.key(), visit)));
  }

  static VisitList list(String text) {
    return VisitList.parse(text.getBytes(StandardCharsets.UTF_8), "visits", "").orThrow();
  }

  /** Another list than the one the cards were drawn from. */
  CardRoll visits(String text) {
    visits = list(text);
    return this;
  }

  /** Cards for every visit of the list as it is now. */
  CardRoll drawn() {
    visits
        .visits()
        .forEach(visit -> issued.put(visit.key(), IssuedCard.of("t-" + visit.key(), visit)));
    return this;
  }

  CardRoll rules(SortingRules settled) {
    rules = settled;
    return this;
  }

  CardRoll day(LocalDate date) {
    day = date;
    return this;
  }

  CardRoll phone(String inFolder, String ofModel, int nextNumber) {
    folder = inFolder;
    model = ofModel;
    number = nextNumber;
    return this;
  }

  CardRoll clockNames() {
    clockNames = true;
    return this;
  }

  CardRoll named(String name) {
    nextName = name;
    return this;
  }

  /** The zone that the next file states. */
  CardRoll zone(ZoneOffset offset) {
    nextZone = offset;
    return this;
  }

  /** The content of the last file once more, under another name but the same number. */
  CardRoll again(String label) {
    Seen last = seen.get(seen.size() - 1);
    String name = last.name().replace(".JPG", ".jpeg");
    seen.add(new Seen(name, last.hash(), last.facts(), last.sighting(), last.filedVisit()));
    names.put(label, name);
    return this;
  }

  /** File numbers that never arrive. */
  CardRoll lost(int count) {
    number += count;
    return this;
  }

  /** A video, which uses up a number. */
  CardRoll video() {
    others.add(folder + String.format(Locale.ROOT, "IMG_%04d.MOV", number++));
    return this;
  }

  CardRoll edited() {
    edited = true;
    return this;
  }

  CardRoll visit(String key, String... times) {
    for (String time : times) {
      add(key + " " + time, time, one(new VisitCard("t-" + key)));
    }
    return this;
  }

  CardRoll view(String view, String time) {
    return view(new ViewCard(view, null, null, null, null), time);
  }

  CardRoll view(ViewCard card, String time) {
    return add(card.view() + " " + time, time, one(card));
  }

  CardRoll unreadable(String time) {
    return add(
        "unreadable " + time,
        time,
        new CardSighting.Refused("a code that can't be read", "photograph the card again"));
  }

  CardRoll photo(String label, String time) {
    return add(label, time, new CardSighting.NoCard());
  }

  CardRoll timeless(String label, CardSighting sighting) {
    return put(label, null, sighting, "");
  }

  CardRoll filed(String label, String time, String visit) {
    return put(label, at(time), new CardSighting.NoCard(), visit);
  }

  private CardRoll add(String label, String time, CardSighting sighting) {
    return put(label, at(time), sighting, "");
  }

  private LocalDateTime at(String time) {
    return day.atTime(LocalTime.parse(time));
  }

  private CardRoll put(
      String label, @Nullable LocalDateTime at, CardSighting sighting, String filed) {
    CaptureFactsBuilder facts =
        CaptureFacts.builder()
            .takenAt(at)
            .make("Lumo")
            .model(model)
            .orientation(1)
            .offset(nextZone);
    if (edited) {
      facts.editingTraces(List.of("changed"));
    }
    String name = folder + name(at);
    seen.add(
        new Seen(
            name,
            ContentHash.of((name + label).getBytes(StandardCharsets.UTF_8)),
            facts.build(),
            sighting,
            filed));
    names.put(label, name);
    edited = false;
    nextName = null;
    nextZone = null;
    return this;
  }

  private String name(@Nullable LocalDateTime at) {
    if (nextName != null) {
      return nextName;
    }
    return clockNames && at != null
        ? String.format(Locale.ROOT, "IMG_%1$tY%1$tm%1$td_%1$tH%1$tM%1$tS.jpg", at)
        : String.format(Locale.ROOT, "IMG_%04d.JPG", number++);
  }

  static CardSighting one(Card card) {
    return new CardSighting.OneCard(card);
  }

  RollCards cards() {
    return new RollCards(seen, others, List.copyOf(issued.values()), rules);
  }

  VisitList visits() {
    return visits;
  }

  String name(String label) {
    return names.get(label);
  }

  Sorting sorting() {
    return Sorting.sort(cards(), visits, Practice.ZONE);
  }

  Sorted of(String label) {
    return sorting().of(name(label));
  }

  /** Key of the visit that is settled; empty if none is. */
  String settled(String label) {
    Sorted sorted = of(label);
    Visit visit = sorted.visit();
    return sorted.settled() && visit != null ? visit.key() : "";
  }

  /** Key of the visit that is proposed; empty if none is. */
  String proposed(String label) {
    Sorted sorted = of(label);
    Visit visit = sorted.visit();
    return !sorted.settled() && visit != null ? visit.key() : "";
  }

  List<String> why(String label) {
    return of(label).reasons().stream().map(WaitReason::sentence).toList();
  }

  static SortingRules openingCard() {
    return new SortingRules(true, false, Duration.ZERO, List.of(), List.of());
  }
}
