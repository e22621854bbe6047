package org.vestibule.simulator;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.vestibule.card.Card;
import org.vestibule.card.CardSighting;
import org.vestibule.card.ViewCard;
import org.vestibule.card.VisitCard;

/** Looks for a fault in the finished day, without asking the one that put it there. */
final class Evidence {

  private final SimulatedDay day;
  private final SeenDay seen;

  Evidence(SimulatedDay day) {
    this.day = day;
    this.seen = day.everything();
  }

  /** True if the day shows the fault. */
  boolean shows(Fault fault) {
    return switch (fault) {
      case LIST_MOVED, CLOCK_MINUTES, CLOCK_HOUR -> outsideWindow() >= 1;
      case LIST_SWAPPED -> outsideWindow() >= 2;
      case LIST_CANCELLED -> clinical().anyMatch(c -> c.visit() == null && !listed(c.patient()));
      case OVERRUN -> visits().anyMatch(visit -> last(visit).isAfter(end(visit)));
      case SAME_NAMES ->
          seen.patients().stream().map(SimulatedPatient::name).distinct().count()
              < seen.patients().size();
      case TWICE_A_DAY ->
          visits().map(visit -> visit.patient().id()).distinct().count() < visits().count();
      case EARLIER_CARD ->
          seen.visits().stream()
              .anyMatch(v -> date(v).isBefore(today()) && !cards(v.token()).isEmpty());
      case LIST_OF_YESTERDAY -> visits().findAny().isEmpty();
      case CHAIRS_ONE_PHONE, LATE_WITH_CLOSING -> spansOverlap();
      case LATE_AFTER_CLOSING -> visits().anyMatch(this::lateWithinAnother);
      case RETAKES ->
          visits().anyMatch(visit -> cards(visit.token()).size() > 1 && afterCards(visit));
      case RETURNS -> visits().anyMatch(this::surrounds);
      case FAMILY_NO_CARD -> child().anyMatch(visit -> cards(visit.token()).isEmpty());
      case PHONE_CARRIED ->
          visits()
              .anyMatch(
                  inner ->
                      cards(inner.token()).isEmpty()
                          && visits().anyMatch(outer -> begunWithin(inner, outer)));
      case FAMILY_CARD -> child().anyMatch(visit -> cards(visit.token()).size() == 2);
      case PRIVATE_BETWEEN -> privateLife().anyMatch(photo -> !withinVisit(photo));
      case PRIVATE_WITHIN -> privateLife().anyMatch(this::withinVisit);
      case DELETED_PHOTOS -> numberGaps();
      default -> showsInCards(fault);
    };
  }

  private boolean showsInCards(Fault fault) {
    return switch (fault) {
      case DELETED_CARD -> visits().anyMatch(visit -> cards(visit.token()).size() == 1);
      case MISSED_OPENING -> visits().anyMatch(visit -> oneCard(visit, false));
      case MISSED_CLOSING -> visits().anyMatch(visit -> oneCard(visit, true));
      case MISSED_SEPARATOR ->
          visits().anyMatch(visit -> oneCard(visit, true))
              && visits().anyMatch(visit -> oneCard(visit, false));
      case WRONG_CARD, OTHER_CHAIRS_CARD ->
          visits().anyMatch(visit -> cards(visit.token()).size() < 2)
              && visits().anyMatch(visit -> cards(visit.token()).size() > 2);
      case CARD_UNREADABLE -> sighted(VisitCard.class, Evidence::isUnreadable);
      case SEVERAL_CARDS -> sighted(VisitCard.class, Evidence::isSeveral);
      case CARD_NOT_SEEN -> sighted(VisitCard.class, CardSighting.NoCard.class::isInstance);
      case VIEW_CARD_NOT_SEEN -> sighted(ViewCard.class, CardSighting.NoCard.class::isInstance);
      case CARD_IN_PHOTO ->
          seen.photos().stream()
              .anyMatch(
                  photo ->
                      truth(photo) instanceof Subject.Clinical
                          && photo.sighting() instanceof CardSighting.OneCard);
      case CARD_TWICE -> visits().anyMatch(visit -> cards(visit.token()).size() == 3);
      case CARD_BY_OTHER_PHONE -> visits().anyMatch(visit -> modelsOf(visit).size() > 1);
      case VIEW_CARD_MISSED, VIEW_CARD_WRONG -> viewAgainstCard();
      default -> showsInFiles(fault);
    };
  }

  private boolean showsInFiles(Fault fault) {
    return switch (fault) {
      case PHONES_ONE_FOLDER -> folders().size() == 1 && models().size() == 2;
      case PHONES_SAME_MODEL -> folders().size() == 1 && models().size() == 1 && windowsOverlap();
      case CLOCK_DAY -> taken().anyMatch(at -> !at.toLocalDate().equals(seen.date()));
      case CLOCK_RESET -> taken().anyMatch(at -> at.getYear() <= 2016);
      case CLOCK_JUMPS, COUNTER_RESET -> numbersAgainstTimes();
      case ZONE_MISSING -> seen.photos().stream().anyMatch(photo -> photo.offset() == null);
      case ZONE_OTHER -> outsideWindow() >= 1;
      case EDITED_TIME -> seen.photos().stream().anyMatch(this::retimed);
      case EDITED_COPY -> seen.photos().stream().anyMatch(p -> p.content().contains("-edited-"));
      case TIMES_GONE -> seen.photos().stream().anyMatch(photo -> photo.takenAt() == null);
      case LATE_FILES, OUT_OF_ORDER -> seen.photos().stream().anyMatch(photo -> photo.run() > 1);
      case DUPLICATES ->
          seen.photos().stream().map(SeenPhoto::content).distinct().count() < seen.photos().size();
      case WRONG_FOLDER, SHARED_FOLDER -> seen.photos().stream().anyMatch(this::inAnothersFolder);
      default -> throw new IllegalArgumentException("no evidence is known for " + fault);
    };
  }

  private Stream<SimulatedVisit> visits() {
    return seen.visits().stream()
        .filter(visit -> date(visit).equals(today()) && !photos(visit).isEmpty());
  }

  private LocalDateTime today() {
    return seen.date().atStartOfDay();
  }

  private static LocalDateTime date(SimulatedVisit visit) {
    return start(visit).toLocalDate().atStartOfDay();
  }

  private static LocalDateTime start(SimulatedVisit visit) {
    return Objects.requireNonNull(visit.start());
  }

  private static LocalDateTime end(SimulatedVisit visit) {
    return Objects.requireNonNull(visit.end());
  }

  private Subject truth(SeenPhoto photo) {
    return Objects.requireNonNull(day.truth().get(photo.key()));
  }

  private static LocalDateTime at(SeenPhoto photo) {
    return Objects.requireNonNull(photo.takenAt());
  }

  private Stream<Subject.Clinical> clinical() {
    return day.truth().values().stream()
        .filter(Subject.Clinical.class::isInstance)
        .map(Subject.Clinical.class::cast);
  }

  private boolean listed(String patient) {
    return seen.visits().stream().anyMatch(visit -> visit.patient().id().equals(patient));
  }

  private Stream<LocalDateTime> taken() {
    return seen.photos().stream().map(Evidence::at);
  }

  /** Clinical photographs of a visit in the order of their times. */
  private List<SeenPhoto> photos(SimulatedVisit visit) {
    return of(subject -> subject instanceof Subject.Clinical c && visit.key().equals(c.visit()));
  }

  private List<SeenPhoto> cards(String token) {
    return of(subject -> subject.equals(new Subject.OfCard(new VisitCard(token))));
  }

  private List<SeenPhoto> of(Predicate<Subject> wanted) {
    return seen.photos().stream()
        .filter(photo -> wanted.test(truth(photo)))
        .sorted(
            Comparator.comparing(
                SeenPhoto::takenAt, Comparator.nullsLast(Comparator.naturalOrder())))
        .toList();
  }

  private LocalDateTime last(SimulatedVisit visit) {
    List<SeenPhoto> photos = photos(visit);
    return at(photos.get(photos.size() - 1));
  }

  private LocalDateTime first(SimulatedVisit visit) {
    return at(photos(visit).get(0));
  }

  private long outsideWindow() {
    return visits().filter(v -> first(v).isBefore(start(v)) || last(v).isAfter(end(v))).count();
  }

  private boolean spansOverlap() {
    return visits().anyMatch(one -> visits().anyMatch(two -> begunWithin(two, one)));
  }

  /** True if the one begins, card or photograph, while the other is not over, on one device. */
  private boolean begunWithin(SimulatedVisit inner, SimulatedVisit outer) {
    LocalDateTime begin = at(all(inner).get(0));
    List<SeenPhoto> others = all(outer);
    return !inner.equals(outer)
        && modelsOf(inner).equals(modelsOf(outer))
        && begin.isAfter(at(others.get(0)))
        && begin.isBefore(at(others.get(others.size() - 1)));
  }

  private List<SeenPhoto> all(SimulatedVisit visit) {
    return Stream.concat(photos(visit).stream(), cards(visit.token()).stream())
        .sorted(Comparator.comparing(Evidence::at))
        .toList();
  }

  private boolean lateWithinAnother(SimulatedVisit visit) {
    LocalDateTime late = last(visit);
    return cards(visit.token()).stream().allMatch(card -> at(card).isBefore(late))
        && visits()
            .anyMatch(
                other ->
                    !other.equals(visit)
                        && modelsOf(other).equals(modelsOf(visit))
                        && at(all(other).get(0)).isBefore(late)
                        && !last(other).isBefore(late.minusMinutes(1)));
  }

  private boolean afterCards(SimulatedVisit visit) {
    return last(visit).isAfter(at(cards(visit.token()).get(1)));
  }

  /** True if another visit on the same phone lies between two of its photographs. */
  private boolean surrounds(SimulatedVisit visit) {
    return visits()
        .anyMatch(
            other ->
                !other.equals(visit)
                    && modelsOf(other).equals(modelsOf(visit))
                    && first(visit).isBefore(first(other))
                    && last(visit).isAfter(last(other)));
  }

  private Stream<SimulatedVisit> child() {
    return visits()
        .filter(
            inner ->
                visits()
                    .anyMatch(
                        outer ->
                            inner.key().equals("C" + outer.key())
                                && !first(inner).isBefore(first(outer))));
  }

  private Stream<SeenPhoto> privateLife() {
    return seen.photos().stream().filter(p -> truth(p) instanceof Subject.OfPrivateLife);
  }

  private boolean withinVisit(SeenPhoto photo) {
    return visits()
        .anyMatch(
            visit ->
                photo.model().equals(photos(visit).get(0).model())
                    && at(photo).isAfter(at(all(visit).get(0)))
                    && at(photo).isBefore(at(all(visit).get(all(visit).size() - 1))));
  }

  private boolean oneCard(SimulatedVisit visit, boolean opening) {
    List<SeenPhoto> cards = cards(visit.token());
    return cards.size() == 1 && at(cards.get(0)).isBefore(first(visit)) == opening;
  }

  private boolean sighted(Class<? extends Card> kind, Predicate<CardSighting> as) {
    return seen.photos().stream()
        .anyMatch(
            photo ->
                truth(photo) instanceof Subject.OfCard card
                    && kind.isInstance(card.card())
                    && as.test(photo.sighting()));
  }

  private static boolean isUnreadable(CardSighting sighting) {
    return sighting instanceof CardSighting.Refused refused && refused.reason().contains("read");
  }

  private static boolean isSeveral(CardSighting sighting) {
    return sighting instanceof CardSighting.Refused refused && refused.reason().contains("Two");
  }

  private Set<String> modelsOf(SimulatedVisit visit) {
    Set<String> models = new HashSet<>();
    all(visit).forEach(photo -> models.add(photo.model()));
    return models;
  }

  private Set<String> models() {
    Set<String> models = new HashSet<>();
    seen.photos().forEach(photo -> models.add(photo.model()));
    return models;
  }

  private Set<String> folders() {
    Set<String> folders = new HashSet<>();
    seen.photos().forEach(photo -> folders.add(photo.folder()));
    return folders;
  }

  private boolean windowsOverlap() {
    return visits()
        .anyMatch(one -> visits().anyMatch(two -> !one.equals(two) && one.overlaps(two)));
  }

  /** True if a photograph follows a view card, on its phone, that says another view. */
  private boolean viewAgainstCard() {
    for (String model : models()) {
      @Nullable String said = null;
      for (SeenPhoto photo : of(subject -> true)) {
        Subject subject = truth(photo);
        if (photo.model().equals(model) && subject instanceof Subject.OfCard card) {
          said = card.card() instanceof ViewCard view ? view.view() : null;
        } else if (photo.model().equals(model)
            && subject instanceof Subject.Clinical clinical
            && !clinical.view().equals(said)) {
          return true;
        }
      }
    }
    return false;
  }

  private boolean numberGaps() {
    return models().stream().anyMatch(model -> gaps(numbers(model)));
  }

  private static boolean gaps(List<Integer> numbers) {
    for (int i = 1; i < numbers.size(); i++) {
      if (numbers.get(i) - numbers.get(i - 1) > 1) {
        return true;
      }
    }
    return false;
  }

  private boolean numbersAgainstTimes() {
    return models().stream()
        .map(this::numbers)
        .anyMatch(numbers -> !numbers.stream().sorted().toList().equals(numbers));
  }

  /** The counter's numbers of a phone's files, in the order of their times. */
  private List<Integer> numbers(String model) {
    return of(subject -> true).stream()
        .filter(photo -> photo.model().equals(model) && photo.fileName().startsWith("IMG_"))
        .map(photo -> Integer.valueOf(photo.fileName().substring(4, 8)))
        .toList();
  }

  private boolean retimed(SeenPhoto photo) {
    LocalDateTime written = photo.fileTime().atZone(seen.zone()).toLocalDateTime();
    return Duration.between(at(photo), written).abs().toMinutes() > 0;
  }

  private boolean inAnothersFolder(SeenPhoto photo) {
    return truth(photo) instanceof Subject.Clinical clinical
        && seen.patients().stream()
            .filter(patient -> patient.id().equals(clinical.patient()))
            .noneMatch(
                patient ->
                    photo.folder().equals(patient.id()) || photo.folder().equals(patient.name()));
  }
}
