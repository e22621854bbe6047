package org.vestibule.simulator;

import java.time.LocalDateTime;
import org.jspecify.annotations.Nullable;

/**
 * A visit as the practice's list has it, which may be stale.
 *
 * @param start planned start on the site's clock; null if nobody stated times
 * @param end planned end on the site's clock, not before the start; null if nobody stated times
 * @param token what the visit's card says
 * @param chair at which it takes place, as the list has it
 */
public record SimulatedVisit(
    String key,
    SimulatedPatient patient,
    @Nullable LocalDateTime start,
    @Nullable LocalDateTime end,
    String token,
    String chair) {

  SimulatedVisit at(@Nullable LocalDateTime newStart, @Nullable LocalDateTime newEnd) {
    return new SimulatedVisit(key, patient, newStart, newEnd, token, chair);
  }

  SimulatedVisit of(SimulatedPatient other) {
    return new SimulatedVisit(key, other, start, end, token, chair);
  }

  SimulatedVisit inChair(String other) {
    return new SimulatedVisit(key, patient, start, end, token, other);
  }

  boolean overlaps(SimulatedVisit other) {
    return start != null
        && end != null
        && other.start != null
        && other.end != null
        && start.isBefore(other.end)
        && other.start.isBefore(end);
  }

  /** True if it takes place at that time and for a minute more. */
  boolean holds(LocalDateTime at) {
    return start != null && end != null && !at.isBefore(start) && !at.plusMinutes(1).isAfter(end);
  }
}
