package org.vestibule.flow;

/**
 * Something known of a photograph that speaks against what a person says of it. Never a reason to
 * refuse a person's word, always one to ask again before it is followed.
 *
 * @param known what is known, as a key or word; empty if the kind says it all
 */
public record Doubt(Kind kind, String known) {

  /** What speaks against it. */
  public enum Kind {
    /** The list, the name or a card names another view. */
    OTHER_VIEW,
    /** They name other teeth. */
    OTHER_TEETH,
    /** They say the mirror otherwise. */
    OTHER_MIRROR,
    /** They say that the incisors lie at another edge. */
    OTHER_INCISORS,
    /** They name another visit. */
    OTHER_VISIT,
    /** The camera, held about level, wrote that another edge is up. */
    CAMERA_UP,
    /** This view is usually taken in a mirror. */
    USUALLY_MIRROR,
    /** This view is usually taken without a mirror. */
    USUALLY_DIRECT,
    /** Faces are not photographed in a mirror. */
    FACE_IN_MIRROR,
    /** A program changed the file, and may have flipped it. */
    EDITED,
    /** A front lens took it, and may have stored a mirror image. */
    FRONT_LENS,
    /** Exif says that the stored picture is a mirror image. */
    REFLECTED,
    /** It was taken outside the visit. */
    OUTSIDE_VISIT
  }
}
