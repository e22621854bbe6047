package org.vestibule.flow.delivering;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.store.ledger.DeliveryState;

/**
 * What one delivery came to.
 *
 * @param destinations in the order of the settings
 * @param warnings what else a person should see to, each a sentence without patient data
 * @param notes what is well as it is, and worth knowing
 * @param removed how many sources left the inbox
 */
public record DeliveryReport(
    List<OfDestination> destinations, List<String> warnings, List<String> notes, int removed) {

  /**
   * What it came to at one destination.
   *
   * @param required true if photographs count as delivered only with its confirmation
   * @param confirmedNow how many objects it confirmed in this run
   * @param counts how many are in each state now
   * @param deadEnds how many need a person
   * @param left why it was left early; empty if everything that was due had its turn
   */
  public record OfDestination(
      String name,
      boolean required,
      int confirmedNow,
      Map<DeliveryState, Integer> counts,
      int deadEnds,
      Optional<Refused<Void>> left) {

    public OfDestination {
      counts = Map.copyOf(counts);
    }

    public int count(DeliveryState state) {
      return counts.getOrDefault(state, 0);
    }

    /** How many are neither confirmed nor taken back. */
    public int open() {
      return count(DeliveryState.WAITING)
          + count(DeliveryState.SENT)
          + count(DeliveryState.FAILED)
          + count(DeliveryState.REFUSED);
    }
  }

  public DeliveryReport {
    destinations = List.copyOf(destinations);
    warnings = List.copyOf(warnings);
    notes = List.copyOf(notes);
  }

  /** True if somebody should look: a dead end, a warning, or an archive that was not served. */
  public boolean needsPerson() {
    return !warnings.isEmpty()
        || destinations.stream().anyMatch(one -> one.deadEnds() > 0 || one.left().isPresent());
  }
}
