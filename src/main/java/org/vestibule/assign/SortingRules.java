package org.vestibule.assign;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * What a site has settled about sorting by cards. {@link #STRICT} is what holds if it has settled
 * nothing; each loosening has its measured risk in docs/unattended.md.
 *
 * @param openingCardSuffices true if a visit card before the photographs is enough, together with
 *     the visit's time
 * @param gapsAreDeletions true if missing file numbers count as photographs deleted on the phone
 * @param margin by which every visit's time is widened at both ends, other patients' too
 * @param corrections of phones' clocks
 * @param chairs at which phones stay
 */
public record SortingRules(
    boolean openingCardSuffices,
    boolean gapsAreDeletions,
    Duration margin,
    List<ClockCorrection> corrections,
    List<PhoneChair> chairs) {

  /** Nothing is loosened. */
  public static final SortingRules STRICT =
      new SortingRules(false, false, Duration.ZERO, List.of(), List.of());

  public SortingRules {
    corrections = List.copyOf(corrections);
    chairs = List.copyOf(chairs);
    if (margin.isNegative()) {
      throw new IllegalArgumentException("a margin is 0 or more but was " + margin);
    }
  }

  Optional<ClockCorrection> correction(Device device) {
    return corrections.stream().filter(each -> each.covers(device)).findFirst();
  }

  /** The chair at which the device stays; empty if nobody said so, or differently. */
  Optional<String> chair(Device device) {
    List<String> named =
        chairs.stream()
            .filter(each -> each.covers(device))
            .map(PhoneChair::chair)
            .distinct()
            .toList();
    return named.size() == 1 ? Optional.of(named.get(0)) : Optional.empty();
  }
}
