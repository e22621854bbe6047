package org.vestibule.deid;

/**
 * What stands in the copy in place of what went.
 *
 * @param patientId the pseudonym, which is written as the patient's name too; at most 64 characters
 * @param uids the substitute of each UID
 * @param shiftDays days that each date is moved by under the Modified Dates option
 * @param keepsTimes whether that option keeps the times of day
 * @param texts what may stay of a text under the Clean options
 */
public record Substitutes(
    String patientId, UidMap uids, long shiftDays, boolean keepsTimes, TextCleaner texts) {

  public Substitutes {
    if (!patientId.matches("[A-Za-z0-9-]{1,64}")) {
      throw new IllegalArgumentException(
          "a pseudonym has 1 to 64 letters, digits and hyphens, but this has "
              + patientId.length()
              + " characters");
    }
  }
}
