package org.vestibule.assign;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** What a person may state about a photograph; each is a column of the manifest. */
public enum PhotoFact {
  /** Key of the visit. */
  VISIT("visit id", "visit key", "appointment"),
  /** The patient's number. */
  PATIENT("patient id", "patient number", "pid"),
  /** In words. */
  VIEW,
  /** That it is about. */
  TEETH("tooth"),
  /** None, as shot or corrected. */
  MIRROR,
  /**
   * The edge at which they lie in the picture as the look sheet shows it: turned by Exif, mirror
   * images still mirrored.
   */
  INCISORS,
  /** The edge of the picture, as the look sheet shows it, that is towards the top of the head. */
  UP("top"),
  /** Four fractions of the picture on the sheet: left, top, right, bottom. */
  CROP,
  /** Separated by ; or |. */
  ACCESSORIES("accessory"),
  /** Of the treatment. */
  STAGE,
  /** It belongs to. */
  TREATMENT,
  /** About the photograph. */
  NOTE("notes", "remark", "comment"),
  /** Yes if edges that can't be turned may be dropped. */
  TRIM,
  /** Yes if the sound rows of a damaged picture may be filed as what is left of it. */
  SALVAGE;

  private static final Set<PhotoFact> MAY_BE_NONE =
      EnumSet.of(TEETH, INCISORS, UP, CROP, ACCESSORIES, STAGE, TREATMENT, NOTE);

  private final String alsoCalled;

  PhotoFact(String... alsoCalled) {
    this.alsoCalled = String.join("|", alsoCalled);
  }

  /** Its word in lists and messages, such as {@code mirror}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** True if a person may say that there is none, which takes away what was proposed or filed. */
  public boolean mayBeNone() {
    return MAY_BE_NONE.contains(this);
  }

  /** The fact with this word. */
  public static Optional<PhotoFact> ofWord(String word) {
    return Stream.of(values()).filter(fact -> fact.word().equals(word)).findFirst();
  }

  Column column() {
    return alsoCalled.isEmpty()
        ? Column.optional(word())
        : Column.optional(word(), alsoCalled.split("\\|", -1));
  }
}
