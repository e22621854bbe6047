package org.vestibule.dental;

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

  static Outcome<Handedness> of(View view, Capture capture) {
    if (capture.mirror() == Mirror.UNKNOWN) {
      return Outcome.refused(
          "nobody said whether this picture was taken in a mirror, so right and left are not known",
          "state the mirror: none, as shot, or already corrected");
    }
    Integer exif = capture.exifOrientation();
    if (exif != null && exif >= 1 && exif <= 8 && Turn.ofExif(exif).reflects()) {
      return Outcome.refused(
          "Exif Orientation "
              + exif
              + " says the stored picture is a mirror image, which no camera"
              + " facing a patient stores; right and left are not known",
          "look for the original file, or save a copy that is upright without that mark");
    }
    boolean personsWord = capture.seen() || capture.mirror() == Mirror.CORRECTED;
    if (capture.frontLens() && !personsWord) {
      return Outcome.refused(
          "a front-facing lens took this picture and may have stored it as a mirror image",
          "look at the preview and state whether the picture is true-handed or a mirror image");
    }
    if (capture.edited() && !personsWord) {
      return Outcome.refused(
          "this picture was edited and may have been flipped already",
          "file the unedited original, or look at the preview and state whether it is true-handed or"
              + " a mirror image");
    }
    if (view.showsFace() && capture.mirror() == Mirror.AS_SHOT && !capture.seen()) {
      return Outcome.refused(
          "a face is not photographed in a mirror, yet this " + view.name() + " is said to be",
          "look at the preview and state whether the picture is true-handed or a mirror image");
    }
    return Outcome.done(known(capture));
  }

  private static Handedness known(Capture capture) {
    String who = capture.seen() ? "seen on the preview: " : "stated: ";
    return switch (capture.mirror()) {
      case NONE -> new Handedness(false, false, List.of(who + "taken without a mirror"));
      case AS_SHOT ->
          new Handedness(
              true,
              true,
              List.of(who + "taken in a mirror, the file still holds the mirror image"));
      case CORRECTED ->
          new Handedness(
              false, true, List.of(who + "taken in a mirror, the file was already corrected"));
      case UNKNOWN -> throw new IllegalStateException("an unknown mirror was not refused");
    };
  }
}
