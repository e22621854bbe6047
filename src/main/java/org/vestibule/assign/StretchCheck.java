package org.vestibule.assign;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.WaitReason.Kind;

/**
 * Whether the order of a stretch is certain, and whether everything in it belongs to the visit of
 * its card. Cards and times must each say so by themselves: then no single mistake with a card, a
 * clock or the schedule can put a photograph under another patient.
 */
final class StretchCheck {

  private static final String LOOK = "look whose photographs these are and file them by hand";

  private final DeviceRoll roll;
  private final Stretch stretch;
  private final SortingFacts facts;
  private final List<Member> members;
  private final List<Member> originals;
  private final List<WaitReason> ofOrder = new ArrayList<>();
  private final List<WaitReason> ofVisit = new ArrayList<>();

  StretchCheck(DeviceRoll roll, Stretch stretch, SortingFacts facts) {
    this.roll = roll;
    this.stretch = stretch;
    this.facts = facts;
    this.members = stretch.members(roll);
    this.originals = members.stream().filter(Member::isOriginal).toList();
  }

  CheckedStretch check() {
    cards();
    clocks();
    OrderCheck.Found order = new OrderCheck(roll, members, facts.otherFiles()).check();
    ofOrder.addAll(order.problems());
    bounds(order);
    gap(order);
    Visit visit = visit().orElse(null);
    if (visit != null) {
      claims(visit);
      new WindowCheck(roll.device(), originals, facts, visit).problem().ifPresent(ofVisit::add);
    }
    return new CheckedStretch(stretch, visit, order, ofOrder, ofVisit);
  }

  private void cards() {
    if (members.stream().anyMatch(each -> isOtherCard(each.token()))) {
      ofOrder.add(
          contradiction(
              "another visit's card was photographed between the photographs of its own visit's"
                  + " card"));
    }
    if (members.stream().anyMatch(each -> each.seen().refused())) {
      ofOrder.add(
          order(
              "between the cards there is a picture with a card that can't be read, or one that"
                  + " can't be opened: it may be the card of another visit",
              "look at that picture; " + LOOK));
    }
    if (members.stream().anyMatch(each -> !each.isPhotograph() && each.seen().facts().edited())) {
      ofOrder.add(
          order("a photograph of a card was changed by a program after it was taken", LOOK));
    }
    if (roll.timeless().stream().anyMatch(this::mayBelongHere)) {
      ofOrder.add(
          order("a photograph of a card has no time, and it may belong between these cards", LOOK));
    }
  }

  private boolean isOtherCard(@Nullable String token) {
    return token != null && !token.equals(stretch.token());
  }

  private boolean mayBelongHere(Member timeless) {
    FileNumber first = members.get(0).number();
    FileNumber last = members.get(members.size() - 1).number();
    FileNumber number = timeless.number();
    if (timeless.isPhotograph()) {
      return false;
    }
    return first == null
        || last == null
        || number == null
        || (first.mayComeBefore(number) && number.mayComeBefore(last));
  }

  private void clocks() {
    originals.stream()
        .filter(each -> !each.time().isFact())
        .findFirst()
        .ifPresent(
            each ->
                ofOrder.add(
                    new WaitReason(
                        Kind.TIME,
                        "of a picture between the cards, " + each.time().clock().words(),
                        LOOK)));
  }

  private void bounds(OrderCheck.Found order) {
    switch (stretch.kind()) {
      case CLOSED -> {}
      case UNCLEAR ->
          ofOrder.add(
              order(
                  "its visit's card was photographed an odd number of times, so one photograph of it"
                      + " is missing and nobody can tell which",
                  "photograph the card once before and once after the photographs; " + LOOK));
      case OPENED -> {
        if (!facts.rules().openingCardSuffices()) {
          ofVisit.add(
              new WaitReason(
                  Kind.CARD_ALONE,
                  "its visit's card was photographed before it, but not again after it, so nobody"
                      + " can tell where the visit ends",
                  "look whether the proposal is right and file it by hand; photograph the card again"
                      + " at the end of each visit"));
        } else if (!order.counted()) {
          ofVisit.add(
              new WaitReason(
                  Kind.CARD_ALONE,
                  "this phone's file names don't count, so a missing card would not be noticed, and"
                      + " the card before it is not enough",
                  "photograph the card again at the end of each visit"));
        }
      }
    }
  }

  /**
   * Without a closing card only the whole row of numbers shows that no card is missing, and that a
   * clock set back did not bring the next visit's photographs to the end of this one.
   */
  private void gap(OrderCheck.Found order) {
    boolean accepted = facts.rules().gapsAreDeletions() && stretch.kind() != Stretch.Kind.OPENED;
    if (order.missing() == 0 || accepted) {
      return;
    }
    ofVisit.add(
        order(
            (order.missing() == 1
                    ? "1 file number is missing between the cards"
                    : order.missing() + " file numbers are missing between the cards")
                + ": a photograph or a card may still be on its way, or was deleted on the phone",
            "let the phone send everything; if it was deleted, " + LOOK));
  }

  private Optional<Visit> visit() {
    IssuedCard card = facts.issued().get(stretch.token());
    if (card == null) {
      ofVisit.add(
          new WaitReason(
              Kind.UNKNOWN_WORD,
              "the visit card beside it is none that was drawn here",
              "draw the day's cards again and throw old ones away; " + LOOK));
      return Optional.empty();
    }
    Optional<Disputed> dispute = facts.visits().dispute(card.visit());
    if (dispute.isPresent()) {
      ofVisit.add(
          new WaitReason(Kind.CONTRADICTION, dispute.get().sentence(), dispute.get().advice()));
      return Optional.empty();
    }
    Optional<Visit> visit = facts.visits().byKey(card.visit());
    if (visit.isEmpty()) {
      ofVisit.add(
          new WaitReason(
              Kind.UNKNOWN_WORD,
              "the visit of the card beside it is no longer in the visit list",
              "enter the visit again, or " + LOOK));
    } else if (!card.stillFits(visit.get())) {
      ofVisit.add(
          contradiction(
              "the visit list has another patient or another day for this visit than when its card"
                  + " was drawn"));
      return Optional.empty();
    }
    return visit;
  }

  private void claims(Visit visit) {
    boolean claimed =
        members.stream()
            .flatMap(each -> facts.claims(each).stream())
            .anyMatch(claim -> claim.contradicts(visit));
    if (claimed) {
      ofVisit.add(
          contradiction(
              "a row, a folder or a file name between the cards names another patient or visit than"
                  + " the cards"));
    }
    boolean filed =
        members.stream()
            .map(each -> each.seen().filedVisit())
            .anyMatch(key -> !key.isEmpty() && !key.equalsIgnoreCase(visit.key()));
    if (filed) {
      ofVisit.add(
          contradiction("a photograph between the cards is filed under another visit already"));
    }
  }

  private static WaitReason contradiction(String sentence) {
    return new WaitReason(Kind.CONTRADICTION, sentence, LOOK);
  }

  private static WaitReason order(String sentence, String advice) {
    return new WaitReason(Kind.CARD_ORDER, sentence, advice);
  }
}
