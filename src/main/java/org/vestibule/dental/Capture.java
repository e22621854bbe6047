package org.vestibule.dental;

import org.jspecify.annotations.Nullable;

/**
 * What is known of how a picture was taken. Edges are those of the raw picture: as the file stores
 * it, before any Exif rotation.
 *
 * @param mirror whether the file holds a mirror image, as a person stated it
 * @param incisors the raw edge at which the incisors lie, if a person stated it
 * @param exifOrientation Exif Orientation, 1 to 8, if the file has one
 * @param frontLens true if a front-facing camera took it, which may store a mirror image
 * @param edited true if the file bears traces of editing
 * @param up the raw edge that must be shown at the top, if a person stated it for a view other than
 *     an occlusal one; it then counts instead of Exif
 * @param seen true if a person looked at this very picture when stating the mirror; a front lens or
 *     editing then no longer makes its handedness unknown
 */
public record Capture(
    Mirror mirror,
    @Nullable Incisors incisors,
    @Nullable Integer exifOrientation,
    boolean frontLens,
    boolean edited,
    @Nullable Edge up,
    boolean seen) {

  /** A capture without a stated top, and not looked at by a person. */
  public Capture(
      Mirror mirror,
      @Nullable Incisors incisors,
      @Nullable Integer exifOrientation,
      boolean frontLens,
      boolean edited) {
    this(mirror, incisors, exifOrientation, frontLens, edited, null, false);
  }

  /** The same with the raw edge that a person wants at the top. */
  public Capture withUp(Edge edge) {
    return new Capture(mirror, incisors, exifOrientation, frontLens, edited, edge, seen);
  }

  /** The same, the mirror having been stated by a person who looked at this very picture. */
  public Capture seenByPerson() {
    return new Capture(mirror, incisors, exifOrientation, frontLens, edited, up, true);
  }
}
