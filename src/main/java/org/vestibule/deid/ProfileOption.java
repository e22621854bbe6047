package org.vestibule.deid;

import java.util.Locale;

/**
 * The options of the Basic Application Level Confidentiality Profile that we can do (PS3.15 E.3).
 */
public enum ProfileOption {
  RETAIN_UIDS("113110", "Retain UIDs Option", false),
  RETAIN_DEVICE_IDENTITY("113109", "Retain Device Identity Option", false),
  RETAIN_INSTITUTION_IDENTITY("113112", "Retain Institution Identity Option", false),
  RETAIN_PATIENT_CHARACTERISTICS("113108", "Retain Patient Characteristics Option", false),
  RETAIN_FULL_DATES("113106", "Retain Longitudinal Temporal Information Full Dates Option", false),
  RETAIN_MODIFIED_DATES(
      "113107", "Retain Longitudinal Temporal Information Modified Dates Option", false),
  CLEAN_DESCRIPTORS("113105", "Clean Descriptors Option", false),
  CLEAN_STRUCTURED_CONTENT("113104", "Clean Structured Content Option", false),
  /** Done only where a named person looked and found no face. */
  CLEAN_RECOGNIZABLE_VISUAL_FEATURES("113102", "Clean Recognizable Visual Features Option", true),
  /** Done only where a named person looked and found no text in the picture. */
  CLEAN_PIXEL_DATA("113101", "Clean Pixel Data Option", true);

  private final String code;
  private final String meaning;
  private final boolean needsAttestation;

  ProfileOption(String code, String meaning, boolean needsAttestation) {
    this.code = code;
    this.meaning = meaning;
    this.needsAttestation = needsAttestation;
  }

  /** The code value in CID 7050, scheme DCM (PS3.16 edition 2026b). */
  public String code() {
    return code;
  }

  public String meaning() {
    return meaning;
  }

  /** True if no program can do it: a person has to look at the picture and say what is in it. */
  public boolean needsAttestation() {
    return needsAttestation;
  }

  /** The name in plain words, such as {@code retain device identity}. */
  public String words() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
