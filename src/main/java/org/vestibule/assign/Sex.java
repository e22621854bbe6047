package org.vestibule.assign;

/** Sex as (0010,0040) has it (PS3.3 C.7.1.1). */
public enum Sex {
  FEMALE("F"),
  MALE("M"),
  OTHER("O"),
  /** Not said: the attribute is empty. */
  NOT_SAID("");

  private final String dicom;

  Sex(String dicom) {
    this.dicom = dicom;
  }

  /** The attribute's value; empty if not said. */
  public String dicom() {
    return dicom;
  }
}
