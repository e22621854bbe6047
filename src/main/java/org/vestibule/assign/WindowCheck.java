package org.vestibule.assign;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.vestibule.assign.WaitReason.Kind;

/**
 * Whether times alone, without any card, say that a stretch is of one visit: all lie within it, and
 * none within a visit of another patient.
 */
final class WindowCheck {

  private final Device device;
  private final List<Member> members;
  private final SortingFacts facts;
  private final Visit visit;
  private final Duration margin;

  WindowCheck(Device device, List<Member> members, SortingFacts facts, Visit visit) {
    this.device = device;
    this.members = members.stream().filter(each -> each.time().isFact()).toList();
    this.facts = facts;
    this.visit = visit;
    this.margin = facts.rules().margin();
  }

  Optional<WaitReason> problem() {
    String chair = facts.visits().plan(visit).chair();
    String phoneChair = facts.rules().chair(device).orElse("");
    if (!phoneChair.isEmpty() && !chair.isEmpty() && !chair.equalsIgnoreCase(phoneChair)) {
      return contradiction(
          "the visit's card was photographed with the phone of another chair",
          "find out which card or phone was taken by mistake; then file the photographs by hand");
    }
    long outside = members.stream().filter(each -> !each.time().within(visit, margin)).count();
    if (outside > 0) {
      return Optional.of(outside(outside));
    }
    if (others(chair, phoneChair).anyMatch(this::holdsOne)) {
      return contradiction(
          "another patient has a visit at the same time, so the time does not confirm the card",
          "look whether the proposal is right and file it by hand; if each phone stays at one chair,"
              + " say so in the settings and give the visits their chairs");
    }
    return Optional.empty();
  }

  private boolean holdsOne(Visit other) {
    return members.stream().anyMatch(each -> each.time().within(other, margin));
  }

  /** Visits of other patients at which this device may have been; disputed ones too. */
  private Stream<Visit> others(String chair, String phoneChair) {
    Stream<Visit> all =
        Stream.concat(
            facts.visits().visits().stream(),
            facts.visits().disputed().stream().map(Disputed::visit));
    boolean apart = !phoneChair.isEmpty() && !chair.isEmpty();
    return all.filter(this::isNear)
        .filter(other -> !VisitsTogether.sameNumber(other.patient(), visit.patient()))
        .filter(
            other -> {
              String its = facts.visits().plan(other).chair();
              return !apart || its.isEmpty() || its.equalsIgnoreCase(phoneChair);
            });
  }

  /** False for most of the many visits on record. */
  private boolean isNear(Visit other) {
    LocalDateTime from = visit.start().minus(margin).minus(margin);
    LocalDateTime to = visit.end().plus(margin).plus(margin);
    return !other.end().isBefore(from) && !other.start().isAfter(to);
  }

  private WaitReason outside(long outside) {
    boolean otherDay =
        members.stream()
            .noneMatch(each -> each.at().toLocalDate().equals(visit.start().toLocalDate()));
    if (otherDay) {
      return new WaitReason(
          Kind.CONTRADICTION,
          "the card beside it is that of a visit on another day",
          "check the phone's date and which card was used; then file the photographs by hand");
    }
    boolean namesake =
        facts.visits().visits().stream()
            .filter(other -> !VisitsTogether.sameNumber(other.patient(), visit.patient()))
            .filter(other -> VisitsTogether.sameName(other.patient(), visit.patient()))
            .anyMatch(this::holdsOne);
    return new WaitReason(
        Kind.CONTRADICTION,
        outside
            + " of "
            + members.size()
            + " pictures from the first card on were taken outside the visit of the card"
            + (namesake ? "; another patient of the same name has a visit then" : ""),
        namesake
            ? "find out which of the two patients it was; then file the photographs by hand"
            : "check whether the visit was moved, the next card was forgotten, or the phone's clock is"
                + " wrong (daylight saving); correct the list or the clock setting, or file by hand");
  }

  private static Optional<WaitReason> contradiction(String sentence, String advice) {
    return Optional.of(new WaitReason(Kind.CONTRADICTION, sentence, advice));
  }
}
