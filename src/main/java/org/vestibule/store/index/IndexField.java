package org.vestibule.store.index;

import java.util.Locale;

/** What can be asked about. Values are compared whole, in the form that each field names. */
public enum IndexField {
  /** Content hash. */
  HASH,
  /** What people call the photograph by. */
  ID,
  /** {@code filed} or {@code waiting}. */
  STATE,
  /** Patient id in lower case. */
  PATIENT,
  /** One word of the patient's name, as {@link FoldedWords} gives it. */
  NAME,
  /** One word of the referrer's name, folded. */
  REFERRER,
  /** One word of the dentist's name, folded. */
  DENTIST,
  /** Accession number in lower case. */
  ACCESSION,
  /** Key of a view. */
  VIEW,
  /** ISO 3950 number of a tooth that was named. */
  TOOTH,
  /** ISO 3950 code of an area that was named. */
  AREA,
  /** ISO 3950 number of a tooth usually in frame, where the view shows a sextant. */
  SEGMENT,
  /** The same where the view shows a quadrant. */
  QUADRANT,
  /** The same where the view shows an arch. */
  ARCH,
  /** The same where the view shows more than an arch. */
  MOUTH,
  /** What stands at a position, such as {@code 36 implant}. */
  POSITION,
  /** What stands at any position, such as {@code implant}. */
  OCCUPANT,
  /** Mirror state, such as {@code as-shot}. */
  MIRROR,
  /** Stage, such as {@code before}. */
  STAGE,
  /** Key of an accessory. */
  ACCESSORY,
  /** What could be better about the picture, such as {@code blur}. */
  ADVICE,
  /** One word of the camera's name, folded. */
  DEVICE,
  /** One word of treatment or note, folded. */
  TEXT;

  String fieldName() {
    return name().toLowerCase(Locale.ROOT);
  }
}
