package org.vestibule.release;

import java.io.IOException;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Crop;
import org.vestibule.base.Outcome;
import org.vestibule.dental.Teeth;

/**
 * A kept object that is to be copied.
 *
 * @param sopUid its SOP Instance UID
 * @param hash the photograph's, 64 hexadecimal digits
 * @param patientWords the patient's name for people
 * @param day on which it was taken, or of the visit; null if neither is known
 * @param view the view in words
 * @param teeth areas and teeth that were named
 * @param crop the part of the object's own picture that may leave; null for all of it
 * @param file reads the object's file
 */
public record Original(
    String sopUid,
    String hash,
    String issuer,
    String patientId,
    String patientWords,
    @Nullable LocalDate day,
    String view,
    Teeth teeth,
    @Nullable Crop crop,
    Source file) {

  /** Reads an object's bytes. */
  @FunctionalInterface
  public interface Source {
    Outcome<byte[]> read() throws IOException;
  }
}
