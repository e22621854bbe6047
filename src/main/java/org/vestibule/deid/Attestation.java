package org.vestibule.deid;

import java.time.LocalDate;

/**
 * What a person says who looked at the pictures: of this they have nothing in them.
 *
 * @param option whose code may be written because of it
 * @param person who looked, by name
 * @param on when
 */
public record Attestation(ProfileOption option, String person, LocalDate on) {
  public Attestation {
    if (!option.needsAttestation()) {
      throw new IllegalArgumentException(option + " is the program's work, not a person's word");
    }
    if (person.isBlank()) {
      throw new IllegalArgumentException("an attestation is somebody's, but it names nobody");
    }
  }
}
