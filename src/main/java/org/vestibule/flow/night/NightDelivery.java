package org.vestibule.flow.night;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.delivering.Delivering;
import org.vestibule.flow.delivering.DeliveryReport;
import org.vestibule.forward.Lines;
import org.vestibule.forward.OutgoingLines;

/** A night's delivery to the archives of the settings. */
final class NightDelivery {

  /** How long a night waits for what is due soon: late reports, second attempts. */
  private static final Duration PATIENCE = Duration.ofMinutes(30);

  private NightDelivery() {}

  /**
   * Delivers. Whatever breaks in it is a warning, since the night's backup comes after it.
   *
   * @param warnings gets why nothing could be delivered
   * @return null if it broke, if there is nowhere to deliver to, or another delivery is at work
   */
  static @Nullable DeliveryReport run(
      Practice practice, String by, Pause pause, List<String> warnings) {
    return practice.settings().forward().destinations().isEmpty()
        ? null
        : run(practice, new OutgoingLines(practice.clock()), by, pause, warnings);
  }

  static @Nullable DeliveryReport run(
      Practice practice, Lines lines, String by, Pause pause, List<String> warnings) {
    try {
      return delivered(practice, lines, by, pause, warnings);
    } catch (IOException | RuntimeException broken) {
      Throwable cause = broken.getCause();
      Throwable kind = broken instanceof UncheckedIOException && cause != null ? cause : broken;
      warnings.add(
          "the delivery to the archives broke off ("
              + kind.getClass().getSimpleName()
              + "): run \"vestibule forward\", which goes on with the rest or says what is wrong");
      return null;
    }
  }

  private static @Nullable DeliveryReport delivered(
      Practice practice, Lines lines, String by, Pause pause, List<String> warnings)
      throws IOException {
    Outcome<DeliveryReport> report =
        new Delivering(practice, lines, new SecureRandom(), by)
            .run(Optional.empty(), PATIENCE, pause::wait);
    if (report instanceof Refused<DeliveryReport> refused) {
      warnings.add("nothing was delivered to an archive: " + refused.sentence());
      return null;
    }
    warnings.addAll(report.orThrow().warnings());
    return report.orThrow();
  }
}
