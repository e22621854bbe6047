package org.vestibule.simulator;

import org.jspecify.annotations.Nullable;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;

/** What a sorter did with a file, by itself. */
public sealed interface Sorted {

  /**
   * Filed. Null stands for what was not claimed.
   *
   * @param patient id of the patient
   * @param visit key of the visit
   * @param view key of the view
   * @param mirror how it was taken
   * @param incisors where the incisors lie in the raw picture
   */
  record Filed(
      String patient,
      @Nullable String visit,
      @Nullable String view,
      @Nullable Mirror mirror,
      @Nullable Incisors incisors)
      implements Sorted {}

  /** Waits for a person, whatever is proposed. */
  record Waits(String reason) implements Sorted {}

  /** Set aside as the photograph of a card: neither filed nor waiting. */
  record SetAside() implements Sorted {}
}
