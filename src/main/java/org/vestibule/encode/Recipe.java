package org.vestibule.encode;

import org.vestibule.dental.Code;

/** How objects are made today. A change that alters the bytes of an object needs a new version. */
public final class Recipe {

  /** Part of every SOP Instance UID: objects of another recipe are other objects. */
  public static final String VERSION = "1";

  static final String SOFTWARE = "Vestibule";
  static final String SOP_CLASS = "1.2.840.10008.5.1.4.1.1.77.1.4";

  /** Coding scheme of our own for devices without a standard code (PS3.16 8: starts with 99). */
  static final String OWN_SCHEME = "99VESTIBULE";

  /** PS3.16 CID 7005, edition 2026b. */
  static final Code MODIFYING_EQUIPMENT = new Code("DCM", "109103", "Modifying Equipment");

  private Recipe() {}
}
