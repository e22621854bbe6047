package org.vestibule.flow.look;

import java.time.Duration;
import org.vestibule.intake.IntakeRules;

/**
 * How a folder is looked at.
 *
 * @param intake how files are read
 * @param sittingGap photographs of one camera that are further apart belong to different sittings
 * @param mayWriteInside true if a person asked for the sheet inside the folder that is looked at
 */
public record LookRules(IntakeRules intake, Duration sittingGap, boolean mayWriteInside) {

  /** Every file, sittings half an hour apart (common practice, no source), nothing inside. */
  public static final LookRules DEFAULT =
      new LookRules(IntakeRules.DEFAULT.withoutSettling(), Duration.ofMinutes(30), false);

  public LookRules {
    if (sittingGap.isNegative() || sittingGap.isZero()) {
      throw new IllegalArgumentException("the gap between sittings must be more than 0");
    }
  }

  /** The same rules, with the sheet allowed inside the folder. */
  public LookRules inside() {
    return new LookRules(intake, sittingGap, true);
  }
}
