package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.base.ContentHash;
import org.vestibule.card.Card;
import org.vestibule.card.CardSighting;
import org.vestibule.card.ViewCard;
import org.vestibule.card.VisitCard;
import org.vestibule.intake.CaptureFacts;

/**
 * Mornings with one mistake each: no photograph is ever settled under another visit or another view
 * than its own. The mistakes are those of the trade (common practice, no source), and a few of
 * files.
 */
class SingleFaultTest {

  private static final long SEED = 20_260_311L;
  private static final int MORNINGS = 60;
  private static final List<String> VIEWS =
      List.of("frontal", "right-buccal", "left-buccal", "smile");

  private enum Fault {
    NONE,
    CARD_FORGOTTEN,
    ALL_CARDS_OF_A_VISIT_FORGOTTEN,
    WRONG_VISIT_CARD,
    WRONG_VIEW_CARD,
    CARD_NOT_READ,
    CARD_NOT_NOTICED,
    LATE_PHOTOGRAPH,
    EXTRA_PHOTOGRAPH,
    CARDS_AFTER_INSTEAD_OF_BEFORE,
    FILE_LOST,
    TIME_EDITED,
    TIME_LOST,
    CLOCK_WRONG,
    CLOCK_SET_BETWEEN,
    VISIT_MOVED,
    LIST_SHIFTED,
    SHARED_FOLDER
  }

  /** What is true of a picture, whatever happens to it. */
  private record Shot(LocalDateTime at, String visit, String view, CardSighting sighting) {
    Shot with(CardSighting other) {
      return new Shot(at, visit, view, other);
    }

    boolean isCard() {
      return sighting instanceof CardSighting.OneCard;
    }

    boolean isVisitCard() {
      return sighting instanceof CardSighting.OneCard one && one.card() instanceof VisitCard;
    }

    boolean isViewCard() {
      return isCard() && !isVisitCard();
    }
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void neverAWrongPatientOrView(boolean counting) {
    Map<Fault, Integer> settled = new EnumMap<>(Fault.class);
    Map<Fault, Integer> viewed = new EnumMap<>(Fault.class);
    for (Fault fault : Fault.values()) {
      for (int round = 0; round < MORNINGS; round++) {
        Morning morning = new Morning(new Random(SEED + round), counting);
        morning.fault(fault);
        String place = "seed " + SEED + ", " + fault + ", round " + round;
        morning.check(place);
        settled.merge(fault, morning.settled, Integer::sum);
        viewed.merge(fault, morning.viewed, Integer::sum);
      }
    }
    assertThat(settled.get(Fault.NONE))
        .as("photographs whose visit is settled")
        .isEqualTo(MORNINGS * 4 * VIEWS.size());
    assertThat(viewed.get(Fault.NONE)).isEqualTo(counting ? MORNINGS * 4 * VIEWS.size() : 0);
    if (counting) {
      assertThat(settled.get(Fault.CARD_FORGOTTEN)).as("the others are settled").isPositive();
      assertThat(settled.get(Fault.CLOCK_WRONG)).isLessThan(settled.get(Fault.NONE));
    }
  }

  @Test
  void withoutTheCardsNothingIsSettled() {
    Morning morning = new Morning(new Random(SEED), true);
    morning.shots.removeIf(Shot::isCard);
    morning.check("seed " + SEED);
    assertThat(morning.settled).isZero();
  }

  /** Four visits one after the other, each with its cards and a series of views. */
  private static final class Morning {

    private static final LocalDate DAY = LocalDate.of(2026, 3, 11);

    private final Random random;
    private final boolean counting;
    private final List<Shot> shots = new ArrayList<>();
    private final List<Visit> visits = new ArrayList<>();
    private final Map<Integer, LocalDateTime> wrongTimes = new HashMap<>();
    private final Map<Integer, Integer> otherNumbers = new HashMap<>();
    private final List<IssuedCard> issued;
    private int lost = -1;
    private int timeless = -1;
    private int settled;
    private int viewed;

    Morning(Random random, boolean counting) {
      this.random = random;
      this.counting = counting;
      LocalDateTime start = DAY.atTime(8, 0);
      for (int at = 0; at < 4; at++) {
        LocalDateTime end = start.plusMinutes(20 + random.nextInt(30));
        visits.add(visit(at, start, end));
        shoot(visits.get(at));
        start = end.plusMinutes(random.nextInt(3) * 5L);
        start = start.equals(end) ? end.plusSeconds(1) : start;
      }
      issued = visits.stream().map(each -> IssuedCard.of("t-" + each.key(), each)).toList();
    }

    private static Visit visit(int at, LocalDateTime start, LocalDateTime end) {
      Patient patient = new Patient("P" + at, "", "Family" + at + "^Given", null, Sex.NOT_SAID);
      return new Visit("V" + at, patient, start, end, "", "", "", "");
    }

    private void shoot(Visit visit) {
      LocalDateTime at = visit.start().plusSeconds(random.nextInt(120));
      shots.add(card(visit, at, new VisitCard("t-" + visit.key())));
      for (String view : VIEWS) {
        at = at.plusSeconds(5 + random.nextInt(60));
        shots.add(card(visit, at, new ViewCard(view, null, null, null, null)));
        at = at.plusSeconds(5 + random.nextInt(60));
        shots.add(new Shot(at, visit.key(), view, new CardSighting.NoCard()));
      }
      at = at.plusSeconds(5 + random.nextInt(60));
      shots.add(card(visit, at, new VisitCard("t-" + visit.key())));
    }

    private static Shot card(Visit visit, LocalDateTime at, Card card) {
      return new Shot(at, visit.key(), "", new CardSighting.OneCard(card));
    }

    void fault(Fault fault) {
      int any = random.nextInt(shots.size());
      String victim = "V" + random.nextInt(4);
      switch (fault) {
        case NONE -> {}
        case CARD_FORGOTTEN -> shots.remove(pick(Shot::isCard));
        case ALL_CARDS_OF_A_VISIT_FORGOTTEN ->
            shots.removeIf(shot -> shot.isCard() && shot.visit().equals(victim));
        case WRONG_VISIT_CARD -> wrongVisitCard(victim);
        case WRONG_VIEW_CARD -> {
          int at = pick(Shot::isViewCard);
          String other = VIEWS.get(random.nextInt(VIEWS.size()));
          shots.set(
              at, shots.get(at).with(CardRoll.one(new ViewCard(other, null, null, null, null))));
        }
        case CARD_NOT_READ ->
            replace(pick(Shot::isCard), new CardSighting.Refused("not read", "again"));
        case CARD_NOT_NOTICED -> replace(pick(Shot::isCard), new CardSighting.NoCard());
        case LATE_PHOTOGRAPH -> late();
        case EXTRA_PHOTOGRAPH -> {
          int at = pick(shot -> !shot.isCard());
          Shot shot = shots.get(at);
          shots.add(
              at + 1, new Shot(shot.at().plusSeconds(2), shot.visit(), "another", shot.sighting()));
        }
        case CARDS_AFTER_INSTEAD_OF_BEFORE -> after(victim);
        case FILE_LOST -> lost = any;
        case TIME_EDITED ->
            wrongTimes.put(any, shots.get(any).at().plusMinutes(random.nextInt(241) - 120));
        case TIME_LOST -> timeless = any;
        case CLOCK_WRONG -> {
          int minutes = random.nextBoolean() ? 60 : random.nextInt(241) - 120;
          for (int at = 0; at < shots.size(); at++) {
            wrongTimes.put(at, shots.get(at).at().plusMinutes(minutes));
          }
          named = true;
        }
        case CLOCK_SET_BETWEEN -> {
          int minutes = random.nextInt(241) - 120;
          for (int at = any; at < shots.size(); at++) {
            wrongTimes.put(at, shots.get(at).at().plusMinutes(minutes));
          }
          named = true;
        }
        case VISIT_MOVED -> {
          int at = random.nextInt(4);
          Visit visit = visits.get(at);
          int minutes = random.nextInt(241) - 120;
          visits.set(
              at, visit(at, visit.start().plusMinutes(minutes), visit.end().plusMinutes(minutes)));
        }
        case LIST_SHIFTED -> {
          for (int at = 0; at < 4; at++) {
            Visit visit = visits.get(at);
            visits.set(
                at, visit.of(new Patient("P" + (at + 1), "", "F^G" + at, null, Sex.NOT_SAID)));
          }
          nothingMaySettle = true;
        }
        case SHARED_FOLDER -> share();
      }
    }

    private boolean nothingMaySettle;
    private boolean named;

    private int pick(java.util.function.Predicate<Shot> wanted) {
      List<Integer> places = new ArrayList<>();
      for (int at = 0; at < shots.size(); at++) {
        if (wanted.test(shots.get(at))) {
          places.add(at);
        }
      }
      return places.get(random.nextInt(places.size()));
    }

    private void replace(int at, CardSighting sighting) {
      shots.set(at, shots.get(at).with(sighting));
    }

    /** Another visit's card is taken from the pile, and used at the beginning and at the end. */
    private void wrongVisitCard(String victim) {
      String other = "V" + random.nextInt(4);
      for (int at = 0; at < shots.size(); at++) {
        if (shots.get(at).isVisitCard() && shots.get(at).visit().equals(victim)) {
          replace(at, CardRoll.one(new VisitCard("t-" + other)));
        }
      }
    }

    /** The next visit's card is photographed while the patient is still in the chair. */
    private void late() {
      int next = pick(shot -> shot.isVisitCard() && !shot.visit().equals("V0"));
      if (shots.get(next - 1).visit().equals(shots.get(next).visit())) {
        return;
      }
      Shot before = shots.get(next - 1);
      Shot card = shots.get(next);
      shots.set(
          next, new Shot(before.at().plusSeconds(2), card.visit(), card.view(), card.sighting()));
      shots.add(
          next + 1,
          new Shot(before.at().plusSeconds(4), before.visit(), "late", new CardSighting.NoCard()));
    }

    private void after(String victim) {
      for (int at = 0; at + 1 < shots.size(); at++) {
        Shot card = shots.get(at);
        Shot photo = shots.get(at + 1);
        if (card.isViewCard() && card.visit().equals(victim)) {
          shots.set(at, new Shot(card.at(), photo.visit(), photo.view(), photo.sighting()));
          shots.set(at + 1, new Shot(photo.at(), card.visit(), "", card.sighting()));
          at++;
        }
      }
    }

    /**
     * A second phone of the same model, whose owner uses no cards, sends into the same folder.
     * Where names don't count, only the list can tell: the other patient is in it.
     */
    private void share() {
      Visit elsewhere = visit(9, DAY.atTime(8, 0), DAY.atTime(13, 0));
      if (!counting) {
        visits.add(elsewhere);
      }
      List<Shot> others = new ArrayList<>();
      for (int i = 0; i < 6; i++) {
        Shot near = shots.get(random.nextInt(shots.size()));
        others.add(
            new Shot(
                near.at().plusSeconds(1), elsewhere.key(), "elsewhere", new CardSighting.NoCard()));
      }
      int number = 7000 + random.nextInt(2000);
      for (Shot shot : others) {
        otherNumbers.put(shots.size(), number++);
        shots.add(shot);
      }
    }

    private List<Seen> seen() {
      List<Seen> seen = new ArrayList<>();
      int number = 9990;
      for (int at = 0; at < shots.size(); at++) {
        Shot shot = shots.get(at);
        LocalDateTime inFile = wrongTimes.getOrDefault(at, shot.at());
        LocalDateTime inName = named ? inFile : shot.at();
        int counted = otherNumbers.getOrDefault(at, number > 9999 ? number - 9999 : number);
        number++;
        String name =
            counting
                ? String.format(Locale.ROOT, "IMG_%04d.JPG", counted)
                : String.format(Locale.ROOT, "IMG_%1$tY%1$tm%1$td_%1$tH%1$tM%1$tS.jpg", inName);
        if (at == lost) {
          continue;
        }
        seen.add(
            new Seen(
                name,
                ContentHash.of((at + name).getBytes(StandardCharsets.UTF_8)),
                CaptureFacts.builder()
                    .takenAt(at == timeless ? null : inFile)
                    .make("Lumo")
                    .model("P1")
                    .build(),
                shot.sighting(),
                ""));
      }
      return seen;
    }

    void check(String place) {
      RollCards cards = new RollCards(seen(), Set.of(), issued, SortingRules.STRICT);
      Sorting sorting = Sorting.sort(cards, new VisitList(visits, List.of()), Practice.ZONE);
      int at = -1;
      for (Seen each : cards.seen()) {
        at++;
        Shot shot = shots.get(lost >= 0 && at >= lost ? at + 1 : at);
        Sorted sorted = sorting.of(each.name());
        if (shot.isCard() || each.showsCard()) {
          continue;
        }
        Visit visit = sorted.visit();
        if (sorted.settled() && visit != null) {
          settled++;
          assertThat(visit.key()).as(place + ", " + each.name()).isEqualTo(shot.visit());
          assertThat(nothingMaySettle).as(place).isFalse();
        }
        ViewCard view = sorted.view().card();
        if (view != null) {
          viewed++;
          assertThat(view.view()).as(place + ", view of " + each.name()).isEqualTo(shot.view());
        }
      }
    }
  }
}
