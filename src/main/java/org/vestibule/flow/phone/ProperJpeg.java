package org.vestibule.flow.phone;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.jpeg.JpegStructure;
import org.vestibule.jpeg.SoundScan;

/** Looks whether a file that came is a JPEG picture, whole and sound. */
final class ProperJpeg {

  /** Start of image and the first byte of the next marker (ITU-T T.81 B.1.1.3). */
  private static final int[] FIRST = {0xFF, 0xD8, 0xFF};

  private ProperJpeg() {}

  /** Refused if the file begins otherwise; done as long as too little of it is here. */
  static Outcome<Long> begins(Path file) throws IOException {
    byte[] start = new byte[FIRST.length];
    int here;
    try (InputStream in = Files.newInputStream(file)) {
      here = in.readNBytes(start, 0, start.length);
    }
    for (int at = 0; at < here; at++) {
      if ((start[at] & 0xFF) != FIRST[at]) {
        return Outcome.refused(
            "this file is no JPEG photograph",
            "set the phone's camera to JPEG (often called \"most compatible\") and take the photograph"
                + " again; this one stays on the phone");
      }
    }
    return Outcome.done((long) here);
  }

  /** Refused if the picture breaks off, or if a code in it can't be read. */
  static Outcome<JpegStructure> whole(Path file) throws IOException {
    Outcome<JpegStructure> sound = SoundScan.check(Files.readAllBytes(file));
    if (sound instanceof Done<JpegStructure> done && !done.value().endMarkerMissing()) {
      return sound;
    }
    String found =
        sound instanceof Refused<JpegStructure> refused
            ? refused.reason()
            : "the file breaks off before the picture's end";
    return Outcome.refused(
        "the photograph is damaged: " + found,
        "take it again; if that can't be done, bring the file into the inbox by cable");
  }
}
