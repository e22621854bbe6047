package org.vestibule.assign;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.HashSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What a device's cards say about its clock: by how much it would have to be set so that every card
 * was photographed during its visit. Only ever a proposal to people.
 */
final class ClockNote {

  private static final int HALF_HOUR = 30;
  private static final int FEWEST_VISITS = 2;

  private final DeviceRoll roll;
  private final SortingFacts facts;

  ClockNote(DeviceRoll roll, SortingFacts facts) {
    this.roll = roll;
    this.facts = facts;
  }

  /** The proposal, or null if there is none. */
  @Nullable String words() {
    long least = Long.MIN_VALUE;
    long most = Long.MAX_VALUE;
    Set<String> visits = new HashSet<>();
    for (Member member : roll.ordered()) {
      Visit visit = visit(member);
      if (visit == null) {
        continue;
      }
      visits.add(visit.key());
      LocalDateTime at = member.at();
      least = Math.max(least, ceilMinutes(Duration.between(at, visit.start())));
      most = Math.min(most, Math.floorDiv(Duration.between(at, visit.end()).toSeconds(), 60L));
    }
    boolean right = least <= 0 && 0 <= most;
    if (visits.size() < FEWEST_VISITS || least > most || right) {
      return null;
    }
    return "the clock of "
        + roll.device().words()
        + " seems to be wrong: its visit cards fit their visits if "
        + likely(least, most)
        + " minutes are added; if that is so, a person states it in the settings";
  }

  private @Nullable Visit visit(Member member) {
    String token = member.token();
    IssuedCard card = token == null ? null : facts.issued().get(token);
    if (card == null) {
      return null;
    }
    return facts.visits().byKey(card.visit()).filter(card::stillFits).orElse(null);
  }

  private static long ceilMinutes(Duration duration) {
    return -Math.floorDiv(-duration.toSeconds(), 60L);
  }

  /** Half hours are likelier than anything else: zones and daylight saving. */
  private static long likely(long least, long most) {
    long halfHour = -Math.floorDiv(-least, HALF_HOUR) * (long) HALF_HOUR;
    return halfHour <= most ? halfHour : least + (most - least) / 2;
  }
}
