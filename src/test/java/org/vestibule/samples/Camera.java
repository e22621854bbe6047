package org.vestibule.samples;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;

/** Three invented cameras in two invented telephones, and how each writes a file. */
final class Camera {

  /** In the open Atlantic, so that it is nobody's address. */
  static final double LATITUDE = 47.5125;

  static final double LONGITUDE = -30.2575;

  static final String SERIAL = "EX-SAMPLE-000417";

  private Camera() {}

  /** A file begun with what the camera itself knows. */
  static void describe(PhoneJpeg.Builder file, Shot shot) {
    switch (shot.camera()) {
      case "back" -> back(file, shot);
      case "front" -> front(file);
      case "duo" -> duo(file, shot);
      default -> throw new IllegalArgumentException("no camera " + shot.camera());
    }
    file.orientation(shot.exif()).takenAt(shot.taken()).whiteBalance(0);
    if (!shot.subSeconds().isEmpty()) {
      file.subSeconds(shot.subSeconds());
    }
    if (shot.offset() != null) {
      file.offset(shot.offset());
    }
    if (shot.has("gps")) {
      file.position(LATITUDE, LONGITUDE, 3);
    }
    if (shot.has("maker")) {
      file.makerNote(makerNote(shot.file()));
    }
  }

  private static void back(PhoneJpeg.Builder file, Shot shot) {
    file.camera("Examplon", "Examplon P1")
        .software(shot.has("edited") ? "Snipper 2.1" : "P1 build 41")
        .bodySerial(SERIAL)
        .owner("Crooked Lantern front desk")
        .lens("Examplon P1 back main 5.7mm f/1.8")
        .exposure(120, 1.8, 80)
        .focal(5.7, 26)
        .flash(9)
        .digitalZoom(1, 1);
  }

  private static void front(PhoneJpeg.Builder file) {
    file.camera("Examplon", "Examplon P1")
        .software("P1 build 41")
        .bodySerial(SERIAL)
        .lens("Examplon P1 front 2.7mm f/2.2")
        .exposure(60, 2.2, 200)
        .focal(2.7, 24)
        .flash(16)
        .digitalZoom(1, 1);
  }

  private static void duo(PhoneJpeg.Builder file, Shot shot) {
    file.camera("Samplia", "Samplia Duo")
        .software("Duo 7")
        .exposure(shot.has("blur") ? 10 : 60, 2.0, 160)
        .focal(4.3, 28)
        .flash(shot.has("blown") ? 1 : 0)
        .digitalZoom(shot.has("zoom") ? 300 : 0, 100);
  }

  /** A block that only its maker could read, if there were one. */
  static byte[] makerNote(String file) {
    byte[] note = new byte[160];
    new Random(file.hashCode()).nextBytes(note);
    byte[] name = "EXAMPLON\0".getBytes(StandardCharsets.US_ASCII);
    System.arraycopy(name, 0, note, 0, name.length);
    Arrays.fill(note, name.length, name.length + 7, (byte) 0);
    return note;
  }
}
