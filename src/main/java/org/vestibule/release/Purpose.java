package org.vestibule.release;

import java.util.Set;
import org.vestibule.deid.ProfileOption;

/**
 * What copies for one purpose may be.
 *
 * @param key such as {@code referral}
 * @param name for people
 * @param named true if the copies say whose they are
 * @param fields tags of what the receiver needs to know; empty unless named
 * @param options of the de-identification profile; empty if named
 * @param dates how days are shown
 * @param keepsTimes whether moved dates keep the times of day
 * @param face whether pictures that show the face may go
 * @param needsConsent whether the patient has to have agreed to this purpose
 * @param needsLook whether a named person has to have looked at each picture
 * @param dicom whether DICOM files may be made
 * @param lasting true if a receiver gets the same pseudonyms again next time
 * @param note what a person should know before using it
 */
public record Purpose(
    String key,
    String name,
    boolean named,
    Set<Integer> fields,
    Set<ProfileOption> options,
    Dates dates,
    boolean keepsTimes,
    Faces face,
    boolean needsConsent,
    boolean needsLook,
    boolean dicom,
    boolean lasting,
    String note) {

  /** How a copy and its sheet tell when. */
  public enum Dates {
    /** As they are. */
    FULL,
    /** Moved by a secret number of days. */
    MODIFIED,
    /** Only the days between the pictures. */
    INTERVAL,
    NONE
  }

  /** Whether a picture that shows the face may go. */
  public enum Faces {
    NEVER,
    /** If the patient's consent says so. */
    WITH_CONSENT,
    /** The patient gets them. */
    OWN
  }

  public Purpose {
    fields = Set.copyOf(fields);
    options = Set.copyOf(options);
  }
}
