package org.vestibule.assign;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.WaitReason.Kind;

/** Sorts what one device took. */
final class DeviceSorting {

  private final DeviceRoll roll;
  private final SortingFacts facts;
  private final List<CheckedStretch> stretches;
  private final Map<Integer, SortedView> views = new HashMap<>();
  private final Set<LocalDate> cardDays = new HashSet<>();

  DeviceSorting(DeviceRoll roll, SortingFacts facts) {
    this.roll = roll;
    this.facts = facts;
    List<CheckedStretch> checked =
        new StretchFinder(roll)
            .find().stream()
                .map(stretch -> new StretchCheck(roll, stretch, facts).check())
                .toList();
    this.stretches = wholeDays(checked);
    stretches.forEach(each -> new ViewCards(roll, each).sort(views));
    roll.ordered().stream()
        .filter(each -> each.token() != null)
        .forEach(each -> cardDays.add(each.at().toLocalDate()));
  }

  List<CheckedStretch> stretches() {
    return stretches;
  }

  /**
   * Where names don't count, a clock that was set in the middle of a day can bring one visit's
   * photographs between another's cards. It upsets the other visit too, so such a day is settled as
   * a whole or not at all.
   */
  private List<CheckedStretch> wholeDays(List<CheckedStretch> checked) {
    Set<LocalDate> unsettled = new HashSet<>();
    checked.stream().filter(each -> !each.isSound()).forEach(each -> unsettled.add(each.day(roll)));
    List<CheckedStretch> whole = new ArrayList<>();
    for (CheckedStretch each : checked) {
      boolean doubtful =
          each.isSound() && !each.order().counted() && unsettled.contains(each.day(roll));
      whole.add(
          doubtful
              ? each.against(
                  new WaitReason(
                      Kind.CARD_ORDER,
                      "this phone's file names don't count, and another of its visits on that day is"
                          + " not clear, so its clock may have been changed in between",
                      "settle the other visit; look whether the proposal is right and file it by"
                          + " hand"))
              : each);
    }
    return whole;
  }

  /** What the cards say about every photograph of the device. */
  void sort(Map<String, Sorted> byName) {
    for (int at = 0; at < roll.ordered().size(); at++) {
      byName.put(
          roll.ordered().get(at).seen().name(),
          sorted(at).with(views.getOrDefault(at, SortedView.NONE)));
    }
    boolean cards = !cardDays.isEmpty();
    for (Member member : roll.timeless()) {
      byName.put(member.seen().name(), cards ? timeless() : Sorted.NONE);
    }
  }

  private static Sorted timeless() {
    return Sorted.waits(
        null,
        List.of(
            new WaitReason(
                Kind.CARD_ALONE,
                "it has no time, so nobody can tell between which cards it belongs",
                "look whose it is and file it by hand")),
        null);
  }

  private Sorted sorted(int at) {
    Member member = roll.ordered().get(at);
    Optional<CheckedStretch> around =
        stretches.stream()
            .filter(each -> each.stretch().holds(at))
            .min(Comparator.comparingInt(each -> each.stretch().length()));
    if (around.isEmpty()) {
      return outside(member);
    }
    CheckedStretch stretch = around.get();
    Visit visit = stretch.visit();
    Visit between = stretch.stretch().kind() == Stretch.Kind.CLOSED ? visit : null;
    if (!stretch.isSound() || visit == null) {
      boolean proposed =
          visit != null && !stretch.contradictsItself() && member.time().within(visit);
      return Sorted.waits(proposed ? visit : null, stretch.reasons(), between);
    }
    if (!member.isOriginal()) {
      return Sorted.waits(
          visit,
          List.of(
              new WaitReason(
                  Kind.CARD_ORDER,
                  "it is a copy or was changed by a program, so neither its time nor its place between"
                      + " the cards is sure",
                  "look whether the proposal is right and file it by hand")),
          between);
    }
    return new Sorted(visit, true, because(stretch), List.of(), between, SortedView.NONE);
  }

  private List<String> because(CheckedStretch stretch) {
    List<String> because = new ArrayList<>();
    because.add(
        stretch.stretch().kind() == Stretch.Kind.CLOSED
            ? "between two photographs of its visit's card"
            : "after a photograph of its visit's card, which is enough by the site's setting");
    because.add("everything from the first card on was taken during that visit");
    facts
        .rules()
        .correction(roll.device())
        .ifPresent(
            each ->
                because.add(
                    "the phone's clock corrected by "
                        + each.words()
                        + ", as stated by "
                        + each.statedBy()));
    if (stretch.order().missing() > 0) {
      because.add(
          stretch.order().missing()
              + " missing file numbers count as deleted by the site's setting");
    }
    return because;
  }

  private Sorted outside(Member member) {
    if (!cardDays.contains(member.at().toLocalDate())) {
      return Sorted.NONE;
    }
    return Sorted.waits(
        null,
        List.of(
            new WaitReason(
                Kind.CARD_ALONE,
                "it was not taken between two photographs of one visit's card: a card was forgotten,"
                    + " or it was taken before its visit's card or after the last one",
                "look whose it is and file it by hand")),
        null);
  }

  /** The correction that the device's own cards suggest, for people. */
  @Nullable String clockNote() {
    return facts.rules().correction(roll.device()).isPresent()
        ? null
        : new ClockNote(roll, facts).words();
  }
}
