package org.vestibule.dental;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/**
 * Finds the one turn that lays a raw picture as its view must be shown, or says why that can't be
 * known.
 *
 * <p>Of the eight turns those remain that keep or reverse handedness as the mirror demands (one
 * mirror is one reflection) and bring every stated landmark where the view has it. Exactly one must
 * be left: none means the facts contradict each other, several that they don't suffice. Nothing is
 * guessed.
 *
 * <p>A picture that was a mirror image says so by one view modifier, "Mirrored photo image
 * intraoral corrected" (CID 4065), whoever flipped it and however. The finer codes of that group
 * (corrected flipped horizontally, vertically, rotated 180 degrees) are not written: which flip was
 * needed depends on how the phone was held over pixels that no reader of the object ever sees, an
 * already flipped file doesn't tell, and a reader could take a flip named there for one still to be
 * done. That code speaks of intraoral pictures, so a face that was mirrored gets one of our own
 * scheme. A modifier lives inside the view's item (PS3.3 C.8.12.1), which every view has: where the
 * standard has no view code, the catalogue's own stands there.
 */
public final class OrientationRule {

  private OrientationRule() {}

  /** The turn for the raw picture of this capture, at a site with this setting. */
  public static Outcome<Laid> lay(View view, LowerArchShown setting, Capture capture) {
    return Handedness.of(view, capture)
        .then(
            handedness ->
                Landmarks.of(view, capture)
                    .then(landmarks -> solve(view, setting, handedness, landmarks)));
  }

  private static Outcome<Laid> solve(
      View view, LowerArchShown setting, Handedness handedness, Landmarks landmarks) {
    PatientOrientation shown = view.shownAs(setting);
    List<Turn> left =
        Arrays.stream(Turn.values())
            .filter(turn -> turn.reflects() == handedness.fileIsMirrorImage())
            .filter(turn -> landmarks.fit(shown.after(turn.inverse())))
            .toList();
    List<String> because = new ArrayList<>(handedness.because());
    because.addAll(landmarks.because());
    if (left.isEmpty()) {
      return Outcome.refused(
          "what is said of this picture can't all be true for the view "
              + view.name()
              + ": "
              + String.join("; ", because),
          "check the view's side, the mirror and the edges on the preview");
    }
    if (left.size() > 1) {
      return Outcome.refused(
          "what is said of this picture leaves "
              + left.size()
              + " ways to lay it: "
              + String.join("; ", because),
          "state the incisors or the top on the preview");
    }
    because.add("the view " + view.name() + " is shown as " + shown.text());
    return Outcome.done(new Laid(left.get(0), shown, modifiers(view, handedness), because));
  }

  private static List<Code> modifiers(View view, Handedness handedness) {
    List<Code> modifiers = new ArrayList<>(view.modifiers());
    if (handedness.correctedMirrorImage()) {
      modifiers.add(CatalogueCode.mirrorCorrected(view));
    }
    return modifiers;
  }
}
