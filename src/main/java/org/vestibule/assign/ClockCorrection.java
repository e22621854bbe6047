package org.vestibule.assign;

import java.time.Duration;
import org.vestibule.intake.CaptureFacts;

/**
 * What a named person says of a phone's clock. The corrected time is compared with the visits; the
 * time that is recorded with a photograph stays as the camera wrote it.
 *
 * @param folder below the inbox in which its photographs arrive; empty for any
 * @param camera the model as the camera writes it; empty for any
 * @param add to the phone's time, to have the practice's; negative if the phone is fast
 * @param statedBy the person
 */
public record ClockCorrection(String folder, String camera, Duration add, String statedBy) {

  public ClockCorrection {
    if (statedBy.isBlank() || (folder.isBlank() && camera.isBlank())) {
      throw new IllegalArgumentException("a person states the correction, and for which phone");
    }
  }

  boolean covers(Device device) {
    return device.isMeant(folder, camera);
  }

  /** The facts on the practice's clock; a zone in the file no longer says anything then. */
  CaptureFacts applied(CaptureFacts facts) {
    return facts.takenAt() == null
        ? facts
        : CaptureFacts.builder().takenAt(facts.takenAt().plus(add)).build();
  }

  /** Such as {@code +60 minutes}. */
  String words() {
    return (add.isNegative() ? "-" : "+") + add.abs().toMinutes() + " minutes";
  }
}
