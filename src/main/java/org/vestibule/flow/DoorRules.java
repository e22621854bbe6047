package org.vestibule.flow;

/**
 * What a site has settled about the patients' identity in its objects.
 *
 * @param identity what objects say of it, and of dates
 * @param facesCovered true if the consent that the site's patients gave covers faces; asked only
 *     where the identity is removed
 */
public record DoorRules(Identity identity, boolean facesCovered) {

  /** What objects say of whose they are. */
  public enum Identity {
    /** All that a clinical record says. */
    KEPT,
    /** A pseudonym; every date moved by days that are fixed for the patient; no times. */
    DATES_MOVED,
    /** A pseudonym, and no dates. */
    NO_DATES
  }

  /** A clinical record. */
  public static final DoorRules CLINICAL = new DoorRules(Identity.KEPT, false);
}
