package org.vestibule.dental;

import java.util.ArrayList;
import java.util.List;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/**
 * Whether the pixels of a file are a mirror image, as far as that is known.
 *
 * @param fileIsMirrorImage true if exactly one reflection must be undone
 * @param correctedMirrorImage true if the shown picture was a mirror image at some time
 */
record Handedness(boolean fileIsMirrorImage, boolean correctedMirrorImage, List<String> because) {

  private static final String LOOK =
      "look at the picture itself, as the look sheet shows it, and say the mirror for it: none, as"
          + " shot or corrected; in a list add \"seen\", as in \"none seen\"";

  static Outcome<Handedness> of(View view, Capture capture) {
    if (capture.mirror() == Mirror.UNKNOWN) {
      return Outcome.refused(
          "nobody said whether this picture was taken in a mirror, so right and left are not known",
          "state the mirror: none, as shot, or already corrected");
    }
    if (!capture.seen()) {
      String doubt = doubt(view, capture);
      if (!doubt.isEmpty()) {
        return Outcome.refused(doubt, LOOK);
      }
    }
    return Outcome.done(known(capture));
  }

  /**
   * Why the picture itself must be looked at before its mirror is believed; empty if it need not.
   */
  private static String doubt(View view, Capture capture) {
    if (reflectedByExif(capture)) {
      return "Exif Orientation "
          + capture.exifOrientation()
          + " says the stored picture is a mirror image, which no camera facing a patient stores;"
          + " right and left are not known";
    }
    if (capture.frontLens()) {
      return "a front-facing lens took this picture and may have stored it as a mirror image";
    }
    if (capture.edited()) {
      return "this picture was edited and may have been flipped already";
    }
    if (view.showsFace() && capture.mirror() != Mirror.NONE) {
      return "a face is not photographed in a mirror, yet this " + view.name() + " is said to be";
    }
    return "";
  }

  private static boolean reflectedByExif(Capture capture) {
    Integer exif = capture.exifOrientation();
    return exif != null && exif >= 1 && exif <= 8 && Turn.ofExif(exif).reflects();
  }

  /**
   * A person who looks sees the picture turned by Exif; where that turn reflects, the stored pixels
   * have the other hand than the picture that was looked at.
   */
  private static Handedness known(Capture capture) {
    boolean reflected = reflectedByExif(capture);
    boolean shownIsMirrorImage = capture.mirror() == Mirror.AS_SHOT;
    List<String> because = new ArrayList<>();
    because.add((capture.seen() ? "seen on the preview: " : "stated: ") + words(capture.mirror()));
    if (reflected) {
      because.add(
          "Exif Orientation " + capture.exifOrientation() + ": the stored pixels are reflected");
    }
    return new Handedness(
        shownIsMirrorImage != reflected, capture.mirror() != Mirror.NONE, List.copyOf(because));
  }

  private static String words(Mirror mirror) {
    return switch (mirror) {
      case NONE -> "taken without a mirror";
      case AS_SHOT -> "taken in a mirror, the file still holds the mirror image";
      case CORRECTED -> "taken in a mirror, the file was already corrected";
      case UNKNOWN -> throw new IllegalStateException("an unknown mirror was not refused");
    };
  }
}
