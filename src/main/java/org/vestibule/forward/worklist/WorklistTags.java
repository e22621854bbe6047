package org.vestibule.forward.worklist;

/** Elements of a worklist (PS3.4 Table K.6-1) for which a photograph has no use. */
final class WorklistTags {

  static final int REQUESTING_PHYSICIAN = 0x00321032;
  static final int STATION_TITLE = 0x00400001;
  static final int START_DATE = 0x00400002;
  static final int START_TIME = 0x00400003;
  static final int PERFORMING_PHYSICIAN = 0x00400006;
  static final int STEP_SEQUENCE = 0x00400100;

  private WorklistTags() {}
}
