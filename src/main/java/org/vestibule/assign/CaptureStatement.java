package org.vestibule.assign;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.WaitReason.Kind;
import org.vestibule.base.Outcome;
import org.vestibule.dental.Capture;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Laid;
import org.vestibule.dental.LowerArchShown;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.OrientationRule;
import org.vestibule.dental.View;
import org.vestibule.intake.CaptureFacts;

/**
 * How a picture was taken: what was said of this picture, else a person's standing statement for
 * its view and camera. Nothing is assumed from what is usual.
 *
 * @param mirror unknown if nobody stated it
 * @param onSheet the edge of the incisors in the picture as the look sheet shows it
 * @param seen true if a person looked at this very picture
 * @param facts what it rests on
 */
record CaptureStatement(
    Mirror mirror, @Nullable Incisors onSheet, boolean seen, List<String> facts) {

  static CaptureStatement of(
      Understood said, CaptureFacts facts, List<CaptureDeclaration> declarations) {
    List<String> because = new ArrayList<>();
    Mirror mirror = said.mirror();
    Incisors onSheet = said.onSheet();
    View view = said.view();
    CaptureDeclaration declared =
        view == null
            ? null
            : declarations.stream()
                .filter(each -> each.covers(view.key(), facts.model()))
                .findFirst()
                .orElse(null);
    if (declared != null && (mirror == Mirror.UNKNOWN || mirror == declared.mirror())) {
      if (mirror == Mirror.UNKNOWN) {
        mirror = declared.mirror();
        because.add("the mirror by the standing statement of " + declared.declaredBy());
      }
      if (onSheet == null && declared.incisors() != null) {
        onSheet = declared.incisors();
        because.add("the incisors by the standing statement of " + declared.declaredBy());
      }
    }
    boolean seen = said.seen() && said.mirror() != Mirror.UNKNOWN;
    return new CaptureStatement(mirror, onSheet, seen, because);
  }

  @Nullable Incisors raw(CaptureFacts facts) {
    return onSheet == null ? null : CaptureWords.raw(onSheet, facts.orientation());
  }

  /** The one way to lay the picture, or why it can't be known. */
  Outcome<Laid> lay(View view, LowerArchShown lowerArch, CaptureFacts facts) {
    if (mirror != Mirror.UNKNOWN && onSheet == null && view.occlusal()) {
      return Outcome.refused(
          "nobody said where the incisors lie in this " + view.name(),
          "say incisors: top, bottom, left or right, as the look sheet shows the picture");
    }
    Capture capture =
        new Capture(
            mirror, raw(facts), facts.orientation(), facts.frontLens(), facts.edited(), null, seen);
    return OrientationRule.lay(view, lowerArch, capture);
  }

  /** Why the picture waits if it can't be laid. */
  WaitReason reason(Outcome.Refused<Laid> refused) {
    return WaitReason.of(mirror == Mirror.UNKNOWN ? Kind.NO_MIRROR : Kind.ORIENTATION, refused);
  }
}
