package org.vestibule.dicom.net;

/** Tags of PS3.6 that only services need. */
final class NetTags {

  static final int TRANSACTION_UID = 0x00081195;
  static final int FAILURE_REASON = 0x00081197;
  static final int FAILED_SOP_SEQUENCE = 0x00081198;

  private NetTags() {}
}
