package org.vestibule.dental;

/**
 * A coded entry of a DICOM context group (PS3.3 8.8, PS3.16).
 *
 * @param scheme coding scheme designator, such as {@code SCT} or {@code DCM}
 * @param value code value
 * @param meaning code meaning as the context group prints it; compare codes, never meanings
 */
public record Code(String scheme, String value, String meaning) {

  /** True if both stand for the same concept, whatever their meanings say. */
  public boolean sameConcept(Code other) {
    return scheme.equals(other.scheme) && value.equals(other.value);
  }
}
