package org.vestibule.web;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.FormatStyle;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Completeness;
import org.vestibule.assign.TakenView;
import org.vestibule.assign.Visit;
import org.vestibule.assign.VisitList;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dental.SeriesCatalogue;
import org.vestibule.dental.SeriesSlot;
import org.vestibule.dental.Teeth;
import org.vestibule.flow.FilingByHand;
import org.vestibule.flow.SeriesGaps;
import org.vestibule.flow.VisitBook;
import org.vestibule.words.Language;
import org.vestibule.words.TradeWords;
import org.vestibule.words.Words;

/** The visits to choose from while one types; those around the photographs' time come first. */
final class VisitChoice {

  private static final int MOST = 12;

  private final Site site;

  VisitChoice(Site site) {
    this.site = site;
  }

  /** The visits that fit what was typed, for the time of a photograph. */
  Answer options(Asked asked) {
    Outcome<VisitList> visits = new VisitBook(site.practice()).all();
    if (!(visits instanceof Done<VisitList> known)) {
      Refused<VisitList> refused = (Refused<VisitList>) visits;
      return Answer.part(
          "visits",
          Map.of("visits", List.of(), "none", refused.reason() + ": " + refused.advice()));
    }
    String typed = asked.query("q").toLowerCase(Locale.ROOT);
    LocalDateTime taken = taken(asked.query("near")).orElse(null);
    List<Visit> fitting =
        known.value().visits().stream()
            .filter(visit -> fits(visit, typed))
            .filter(visit -> !typed.isEmpty() || taken == null || sameDay(visit, taken))
            .sorted(
                Comparator.comparing((Visit visit) -> distance(visit, taken))
                    .thenComparing(Visit::start)
                    .thenComparing(Visit::key))
            .limit(MOST)
            .toList();
    Words words = PageWords.of(asked.language());
    return Answer.part(
        "visits",
        Map.of(
            "visits",
            fitting.stream().map(visit -> model(visit, taken, asked)).toList(),
            "none",
            fitting.isEmpty() ? words.say("visit-none") : ""));
  }

  private Optional<LocalDateTime> taken(String key) {
    return site.photoKeys()
        .find(key)
        .flatMap(photo -> new FilingByHand(site.practice()).takenAt(photo));
  }

  private static boolean sameDay(Visit visit, LocalDateTime taken) {
    LocalDate day = taken.toLocalDate();
    return !visit.start().toLocalDate().isAfter(day) && !visit.end().toLocalDate().isBefore(day);
  }

  private static Duration distance(Visit visit, @Nullable LocalDateTime taken) {
    if (taken == null) {
      return Duration.ZERO;
    }
    if (taken.isBefore(visit.start())) {
      return Duration.between(taken, visit.start());
    }
    return taken.isAfter(visit.end()) ? Duration.between(visit.end(), taken) : Duration.ZERO;
  }

  private static boolean fits(Visit visit, String typed) {
    String all =
        (visit.key()
                + " "
                + visit.patient().id()
                + " "
                + name(visit)
                + " "
                + visit.start().toLocalDate())
            .toLowerCase(Locale.ROOT);
    return Arrays.stream(typed.split("[\\s,]+")).allMatch(all::contains);
  }

  private Map<String, Object> model(Visit visit, @Nullable LocalDateTime taken, Asked asked) {
    Words words = PageWords.of(asked.language());
    boolean holds = taken != null && distance(visit, taken).isZero();
    return Map.of(
        "key", visit.key(),
        "name", name(visit),
        "number", visit.patient().id(),
        "when", when(visit, asked.language()),
        "holds", taken == null ? "" : words.say(holds ? "visit-holds" : "visit-outside"));
  }

  /** A person's name in the order in which it is sorted: family name, given names. */
  static String name(Visit visit) {
    return visit.patient().name().replaceFirst("\\^", ", ").replace('^', ' ').strip();
  }

  static String when(Visit visit, Language language) {
    DateTimeFormatter day =
        new DateTimeFormatterBuilder()
            .appendLocalized(FormatStyle.MEDIUM, null)
            .toFormatter(language.locale());
    DateTimeFormatter time = DateTimeFormatter.ofPattern("HH:mm", language.locale());
    return day.format(visit.start())
        + ", "
        + time.format(visit.start())
        + "–"
        + time.format(visit.end());
  }

  /** What the visit's series lacks, or has more than once, with what is labelled so far. */
  Answer series(Asked asked) {
    Words words = PageWords.of(asked.language());
    TradeWords trade = new TradeWords(words, site.practice().views());
    Map<String, Object> model = new HashMap<>(Map.of("missing", "", "doubled", "", "complete", ""));
    if (new VisitBook(site.practice()).all() instanceof Done<VisitList> visits) {
      List<TakenView> also = new ArrayList<>();
      asked.queries("view").stream()
          .flatMap(key -> site.practice().views().byKey(key).stream())
          .forEach(view -> also.add(new TakenView(view, Teeth.NONE, null, List.of())));
      visits
          .value()
          .byKey(asked.query("visit"))
          .flatMap(visit -> new SeriesGaps(site.practice()).of(visit, visits.value(), also))
          .ifPresent(found -> put(found, words, trade, model));
    }
    return Answer.part("series", model);
  }

  private void put(Completeness found, Words words, TradeWords trade, Map<String, Object> model) {
    String series = words.say("series-" + found.series().words().replace(' ', '-'));
    model.put("complete", found.isComplete() ? words.say("series-complete", series) : "");
    if (!found.isComplete()) {
      String missing =
          found.missing().stream()
              .map(slot -> slot(found, slot, trade))
              .collect(Collectors.joining(", "));
      model.put("missing", words.say("series-missing", series, missing));
    }
    if (!found.doubled().isEmpty()) {
      String doubled =
          found.doubled().stream().map(trade::viewNamed).collect(Collectors.joining(", "));
      model.put("doubled", words.say("series-doubled", doubled));
    }
  }

  /** A slot by the views that fill it, and its stage. */
  private static String slot(Completeness found, String name, TradeWords trade) {
    return SeriesCatalogue.slots(found.series()).stream()
        .filter(slot -> slot.name().equals(name))
        .findFirst()
        .map(slot -> words(slot, trade))
        .orElse(name);
  }

  private static String words(SeriesSlot slot, TradeWords trade) {
    String views =
        slot.views().stream().map(key -> trade.view(key)).collect(Collectors.joining(" / "));
    String stage = slot.stage() == null ? "" : trade.stage(slot.stage().words());
    return String.join(" ", views, stage).strip();
  }

  /** A visit by its key, for a page that shows which one is chosen. */
  Optional<Map<String, Object>> chosen(String key, Asked asked) {
    return new VisitBook(site.practice()).all() instanceof Done<VisitList> visits
        ? visits.value().byKey(key).map(visit -> model(visit, null, asked))
        : Optional.empty();
  }
}
