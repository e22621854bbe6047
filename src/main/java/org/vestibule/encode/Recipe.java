package org.vestibule.encode;

import org.vestibule.dental.Code;

/** How objects are made today. A change that alters the bytes of an object needs a new version. */
public final class Recipe {

  /** Part of every SOP Instance UID: objects of another recipe are other objects. */
  public static final String VERSION = "2";

  static final String SOFTWARE = "Vestibule";

  /** VL Photographic Image Storage. */
  public static final String SOP_CLASS = "1.2.840.10008.5.1.4.1.1.77.1.4";

  /** Whose the extensions of context groups are: a UUID under 2.25 (PS3.5 B.2), drawn once. */
  static final String CODES_CREATOR = "2.25.329571700779338411453474895933629333805";

  /** Day of the catalogue's last change of codes, YYYYMMDD. */
  static final String CODES_VERSION = "20261125";

  /** PS3.16 CID 7005, edition 2026b. */
  static final Code MODIFYING_EQUIPMENT = new Code("DCM", "109103", "Modifying Equipment");

  private Recipe() {}
}
