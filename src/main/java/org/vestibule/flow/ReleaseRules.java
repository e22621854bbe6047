package org.vestibule.flow;

import org.vestibule.base.Outcome;
import org.vestibule.release.Format;
import org.vestibule.release.Purpose;
import org.vestibule.release.Release;
import org.vestibule.release.ReleaseMaker;
import org.vestibule.store.ledger.ReleaseRow;

/** What a request has to say for its purpose. */
final class ReleaseRules {

  private ReleaseRules() {}

  static Outcome<Purpose> fits(Purpose purpose, ReleaseWords words) {
    if (words.recipient().isBlank() || words.askedBy().isBlank() || words.why().isBlank()) {
      return Outcome.refused(
          "it is not said for whom the copies are, who asked for them and why",
          "say it in a few words each: the record keeps it");
    }
    if (words.formats().isEmpty()) {
      return Outcome.refused("no format is named", "say dicom, jpeg or both");
    }
    if (words.formats().contains(Format.DICOM) && !purpose.dicom()) {
      return Outcome.refused(
          "copies for \"" + purpose.name() + "\" are JPEG files only", "ask for jpeg");
    }
    if (purpose.needsLook() && words.lookedBy().isBlank()) {
      return Outcome.refused(
          "nobody is named who looked at each picture for text and faces",
          "have a person look, and give the name with --looked-by");
    }
    return crops(purpose, words);
  }

  static <T> Outcome<T> strangeCrop(String id) {
    return Outcome.refused(
        "a crop is said for " + id + ", which is not among the photographs",
        "write the id as it stands among the photographs");
  }

  /** A crop that takes the face out is worth no more than the word of who looked at it. */
  private static Outcome<Purpose> crops(Purpose purpose, ReleaseWords words) {
    for (String id : words.crops().keySet()) {
      if (!words.photos().contains(id)) {
        return strangeCrop(id);
      }
    }
    return words.crops().isEmpty() || !words.lookedBy().isBlank()
        ? Outcome.done(purpose)
        : Outcome.refused(
            "nobody is named who looked at the part that is to be cropped and found no face in it",
            "have a person look, and give the name with --looked-by");
  }

  /**
   * The same release has the same bytes, whatever program makes it; or none is handed over.
   *
   * @param madeBy the version by which it was made first; empty if that was not recorded
   */
  static Outcome<Release> same(ReleaseRow row, String madeBy, Release release) {
    if (row.manifestHash().equals(release.manifestHash())) {
      return Outcome.done(release);
    }
    boolean isOther = !madeBy.isEmpty() && !madeBy.equals(ReleaseMaker.VERSION);
    boolean isSame = madeBy.equals(ReleaseMaker.VERSION);
    return Outcome.refused(
        "the copies of release "
            + row.id()
            + " would not be the same as before"
            + (isOther
                ? ": it was made by version "
                    + madeBy
                    + " of the way copies are made, and this program has version "
                    + ReleaseMaker.VERSION
                : ""),
        isOther
            ? "make a new release, or use the program it was made with"
            : isSame
                ? "a photograph or a setting was changed since: make a new release"
                : "a photograph, a setting or this program was changed since: make a new release");
  }
}
