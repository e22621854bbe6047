package org.vestibule.dicom.net;

/** UIDs of PS3.6 annex A that associations need. */
public final class NetUids {

  public static final String VERIFICATION = "1.2.840.10008.1.1";
  public static final String STORAGE_COMMITMENT_PUSH = "1.2.840.10008.1.20.1";
  public static final String MODALITY_WORKLIST_FIND = "1.2.840.10008.5.1.4.31";
  public static final String STUDY_ROOT_FIND = "1.2.840.10008.5.1.4.1.2.2.1";

  static final String STORAGE_COMMITMENT_INSTANCE = "1.2.840.10008.1.20.1.1";
  static final String APPLICATION_CONTEXT = "1.2.840.10008.3.1.1.1";
  static final String IMPLICIT_LITTLE_ENDIAN = "1.2.840.10008.1.2";
  static final String EXPLICIT_LITTLE_ENDIAN = "1.2.840.10008.1.2.1";

  private NetUids() {}
}
