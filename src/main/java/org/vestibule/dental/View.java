package org.vestibule.dental;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A way of photographing the mouth or the face.
 *
 * @param key its lasting name, such as {@code upper-occlusal}
 * @param name its name for people
 * @param words the phrases people use for it, the name included
 * @param teeth the teeth usually in frame
 * @param region anatomic region (CID 4028)
 * @param structure primary anatomic structure (CID 4061), if one fits
 * @param view view code (CID 4062 or 4063), if one fits; without it the catalogue's own code says
 *     what the view is
 * @param modifiers view modifiers (CID 4065) that always belong to it
 * @param shownAs how it must be shown; the lower arch from above as {@link
 *     LowerArchShown#INCISORS_DOWN}
 * @param shownIncisorsUp how it is shown where a site has the lower arch with the incisors up
 * @param looking the direction in which the camera, or its image in the mirror, looks
 * @param usualMirror how it is usually taken: {@link Mirror#NONE} directly, {@link Mirror#AS_SHOT}
 *     in a mirror, {@link Mirror#UNKNOWN} where both are usual
 * @param series the series it belongs to
 * @param arch the arch it shows, if it is one
 * @param side the patient's side it shows, if it is one
 * @param occlusal true if the camera points up or down, where Exif rotation can't be trusted
 * @param showsFace true if the face can be recognised even when the picture is well framed
 */
public record View(
    String key,
    String name,
    List<String> words,
    UsualTeeth teeth,
    Code region,
    @Nullable Code structure,
    @Nullable Code view,
    List<Code> modifiers,
    PatientOrientation shownAs,
    @Nullable PatientOrientation shownIncisorsUp,
    Direction looking,
    Mirror usualMirror,
    Set<Series> series,
    @Nullable Arch arch,
    @Nullable Side side,
    boolean occlusal,
    boolean showsFace) {

  /**
   * @throws IllegalArgumentException if a way of showing it is not what a camera sees that looks
   *     its way
   */
  public View {
    words = List.copyOf(words);
    modifiers = List.copyOf(modifiers);
    series = Set.copyOf(series);
    if (!shownAs.handednessFits(looking)
        || (shownIncisorsUp != null && !shownIncisorsUp.handednessFits(looking))) {
      throw new IllegalArgumentException(
          "view "
              + key
              + " would be shown as its own mirror image: no camera looking towards "
              + looking.words()
              + " sees "
              + shownAs.text());
    }
  }

  /**
   * The side whose parts alone it shows; null if it shows both, even if it is seen from one side,
   * as front teeth are that are photographed obliquely.
   */
  public @Nullable Side onlySide() {
    boolean both =
        Stream.of(teeth.permanent(), teeth.mixed(), teeth.deciduous())
            .flatMap(List::stream)
            .anyMatch(tooth -> tooth.side() != side);
    return both ? null : side;
  }

  /** Every way in which a site may have it shown. */
  public List<PatientOrientation> layouts() {
    return shownIncisorsUp == null ? List.of(shownAs) : List.of(shownAs, shownIncisorsUp);
  }

  /** How it must be shown at a site with this setting. */
  public PatientOrientation shownAs(LowerArchShown setting) {
    return setting == LowerArchShown.INCISORS_UP && shownIncisorsUp != null
        ? shownIncisorsUp
        : shownAs;
  }
}
