package org.vestibule.assign;

import java.time.LocalDate;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A patient, as the practice's own list has them.
 *
 * @param id the practice's number for the patient
 * @param issuer who issues such numbers; empty if not said
 * @param name in DICOM's form, Family^Given (PS3.5 6.2, PN)
 * @param birthDate if known
 * @param sex if known
 */
public record Patient(
    String id, String issuer, String name, @Nullable LocalDate birthDate, Sex sex) {

  /**
   * The column in which two accounts of one patient contradict each other: name, birth date or sex.
   * Empty if they agree, if one says less, or if they are of two patients.
   */
  public Optional<String> contradiction(Patient other) {
    if (!VisitsTogether.sameNumber(this, other)) {
      return Optional.empty();
    }
    if (!VisitsTogether.sameName(this, other)) {
      return Optional.of("name");
    }
    if (birthDate != null && other.birthDate != null && !birthDate.equals(other.birthDate)) {
      return Optional.of("birth date");
    }
    boolean bothSay = sex != Sex.NOT_SAID && other.sex != Sex.NOT_SAID;
    return bothSay && sex != other.sex ? Optional.of("sex") : Optional.empty();
  }

  /** This patient under the same number with the details of a newer account. */
  public Patient changedTo(Patient newer) {
    Patient full = newer.fuller(this);
    return new Patient(id, issuer, full.name, full.birthDate, full.sex);
  }

  /** This account, with what it leaves out taken from another of the same patient. */
  public Patient fuller(Patient other) {
    return new Patient(
        id,
        issuer,
        name,
        birthDate == null ? other.birthDate : birthDate,
        sex == Sex.NOT_SAID ? other.sex : sex);
  }
}
