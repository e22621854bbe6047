package org.vestibule.intake;

/** Exif tag numbers (CIPA DC-008 2.32 and, from {@link #IMAGE_EDITOR} on, 3.0; from memory). */
final class Tag {

  static final int PROCESSING_SOFTWARE = 0x000B;
  static final int IMAGE_DESCRIPTION = 0x010E;
  static final int MAKE = 0x010F;
  static final int MODEL = 0x0110;
  static final int ORIENTATION = 0x0112;
  static final int MODIFY_DATE = 0x0132;
  static final int ARTIST = 0x013B;
  static final int HOST_COMPUTER = 0x013C;
  static final int COPYRIGHT = 0x8298;
  static final int EXPOSURE_TIME = 0x829A;
  static final int F_NUMBER = 0x829D;
  static final int ISO = 0x8827;
  static final int STANDARD_OUTPUT_SENSITIVITY = 0x8831;
  static final int RECOMMENDED_EXPOSURE_INDEX = 0x8832;
  static final int DATE_TIME_ORIGINAL = 0x9003;
  static final int DATE_TIME_DIGITIZED = 0x9004;
  static final int OFFSET_TIME_ORIGINAL = 0x9011;
  static final int OFFSET_TIME_DIGITIZED = 0x9012;
  static final int SHUTTER_SPEED_VALUE = 0x9201;
  static final int APERTURE_VALUE = 0x9202;
  static final int FLASH = 0x9209;
  static final int FOCAL_LENGTH = 0x920A;
  static final int IMAGE_HISTORY = 0x9213;
  static final int MAKER_NOTE = 0x927C;
  static final int USER_COMMENT = 0x9286;
  static final int SUB_SEC_ORIGINAL = 0x9291;
  static final int SUB_SEC_DIGITIZED = 0x9292;
  static final int WINDOWS_TITLE = 0x9C9B;
  static final int WINDOWS_COMMENT = 0x9C9C;
  static final int WINDOWS_AUTHOR = 0x9C9D;
  static final int WINDOWS_KEYWORDS = 0x9C9E;
  static final int WINDOWS_SUBJECT = 0x9C9F;
  static final int COLOUR_SPACE = 0xA001;
  static final int EXIF_WIDTH = 0xA002;
  static final int EXIF_HEIGHT = 0xA003;
  static final int WHITE_BALANCE = 0xA403;
  static final int DIGITAL_ZOOM = 0xA404;
  static final int FOCAL_LENGTH_35 = 0xA405;
  static final int UNIQUE_ID = 0xA420;
  static final int OWNER = 0xA430;
  static final int BODY_SERIAL = 0xA431;
  static final int LENS_MODEL = 0xA434;
  static final int LENS_SERIAL = 0xA435;
  static final int IMAGE_TITLE = 0xA436;
  static final int PHOTOGRAPHER = 0xA437;
  static final int IMAGE_EDITOR = 0xA438;
  static final int RAW_SOFTWARE = 0xA43A;
  static final int EDITING_SOFTWARE = 0xA43B;

  private Tag() {}
}
