package org.vestibule.assign;

import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;

/**
 * A named person's standing statement on how a view is always taken here with one kind of camera.
 *
 * <p>It speaks of the RAW picture, as the file stores it. How a phone is held over the mouth stays
 * the same; what it notes as Exif Orientation while it points up or down does not, so a statement
 * about the turned picture would put the incisors at another edge from shot to shot.
 *
 * @param view the view's key
 * @param camera the model as the camera writes it
 * @param mirror as every such file holds the picture
 * @param incisors the edge of the raw picture, before any Exif turn, if it is always the same
 * @param declaredBy who states it
 */
public record CaptureDeclaration(
    String view, String camera, Mirror mirror, @Nullable Incisors incisors, String declaredBy) {

  public CaptureDeclaration {
    if (mirror == Mirror.UNKNOWN || declaredBy.isBlank()) {
      throw new IllegalArgumentException("a declaration states the mirror, and a person states it");
    }
  }

  /** A declaration from plain words; empty incisors are not stated. */
  public static Outcome<CaptureDeclaration> of(
      String view, String camera, String mirror, String incisors, String by) {
    if (by.isBlank()) {
      return Outcome.refused("a standing statement names nobody", "say who states it");
    }
    return CaptureWords.mirror(mirror)
        .then(
            known ->
                incisors.isBlank()
                    ? Outcome.done(
                        new CaptureDeclaration(view, camera, known.mirror(), null, by.strip()))
                    : CaptureWords.incisors(incisors)
                        .map(
                            edge ->
                                new CaptureDeclaration(
                                    view, camera, known.mirror(), edge, by.strip())));
  }

  /** True if both state the same of a picture, whoever states it. */
  boolean saysTheSame(CaptureDeclaration other) {
    return mirror == other.mirror && incisors == other.incisors;
  }

  /** True if it speaks of this view and camera. */
  boolean covers(String viewKey, @Nullable String model) {
    return model != null && view.equals(viewKey) && camera.strip().equalsIgnoreCase(model.strip());
  }
}
