package org.vestibule.assign;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.WaitReason.Kind;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;
import org.vestibule.dental.Capture;
import org.vestibule.dental.Edge;
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
 * @param raw the edge of the raw picture at which the incisors lie, if somebody stated it
 * @param up the edge of the raw picture that is towards the top of the head, if somebody stated it
 * @param seen true if a person looked at this very picture
 * @param doubt why a standing statement can't be followed for this picture, if that matters
 * @param facts what it rests on
 */
record CaptureStatement(
    Mirror mirror,
    @Nullable Incisors raw,
    @Nullable Edge up,
    boolean seen,
    @Nullable WaitReason doubt,
    List<String> facts) {

  CaptureStatement {
    facts = List.copyOf(facts);
  }

  static CaptureStatement of(
      Understood said, CaptureFacts facts, List<CaptureDeclaration> declarations) {
    Turn sheet = Turn.asShown(facts.orientation());
    Incisors onSheet = said.onSheet();
    Incisors raw = onSheet == null ? null : onSheet.inRaw(sheet);
    Edge upOnSheet = said.upOnSheet();
    Edge up = upOnSheet == null ? null : upOnSheet.inRaw(sheet);
    boolean seen = said.seen() && said.mirror() != Mirror.UNKNOWN;
    CaptureStatement own = new CaptureStatement(said.mirror(), raw, up, seen, null, List.of());
    View view = said.view();
    if (view == null || own.suffices(view)) {
      return own;
    }
    List<CaptureDeclaration> covering =
        declarations.stream().filter(each -> each.covers(view.key(), facts.model())).toList();
    if (covering.isEmpty()) {
      return own;
    }
    CaptureDeclaration first = covering.get(0);
    if (!covering.stream().allMatch(first::saysTheSame)) {
      return own.doubted(
          Kind.CONTRADICTION,
          "two standing statements for this view and camera disagree",
          "correct them in the settings");
    }
    return own.with(first, facts);
  }

  private boolean suffices(View view) {
    return mirror != Mirror.UNKNOWN && (raw != null || !view.occlusal());
  }

  /** What a standing statement adds: never to a picture that is not as the camera wrote it. */
  private CaptureStatement with(CaptureDeclaration declared, CaptureFacts facts) {
    if (mirror != Mirror.UNKNOWN && mirror != declared.mirror()) {
      return this;
    }
    if (facts.edited() || facts.frontLens()) {
      return doubted(
          Kind.ORIENTATION,
          "a standing statement speaks of pictures as the rear camera stores them, but this one was "
              + (facts.edited() ? "edited" : "taken with a front-facing lens"),
          "look at the preview and state mirror and incisors for this picture");
    }
    List<String> because = new ArrayList<>();
    if (mirror == Mirror.UNKNOWN) {
      because.add("the mirror by the standing statement of " + declared.declaredBy());
    }
    if (raw == null && declared.incisors() != null) {
      because.add("the incisors by the standing statement of " + declared.declaredBy());
    }
    return new CaptureStatement(
        declared.mirror(), raw == null ? declared.incisors() : raw, up, seen, null, because);
  }

  private CaptureStatement doubted(Kind kind, String sentence, String advice) {
    return new CaptureStatement(
        mirror, raw, up, seen, new WaitReason(kind, sentence, advice), List.of());
  }

  /** The one way to lay the picture, or why it can't be known. */
  Outcome<Laid> lay(View view, LowerArchShown lowerArch, CaptureFacts facts) {
    if (mirror != Mirror.UNKNOWN && raw == null && view.occlusal()) {
      return Outcome.refused(
          "nobody said where the incisors lie in this " + view.name(),
          "say incisors: top, bottom, left or right, as the look sheet shows the picture");
    }
    if (mirror != Mirror.UNKNOWN && nothingSaysUp(view, facts)) {
      return Outcome.refused(
          "the file does not say which way is up in this " + view.name(),
          "say up: top, bottom, left or right, the edge of the picture on the look sheet that is"
              + " towards the top of the head");
    }
    Capture capture =
        new Capture(mirror, raw, facts.orientation(), facts.frontLens(), facts.edited(), up, seen);
    return OrientationRule.lay(view, lowerArch, capture);
  }

  private boolean nothingSaysUp(View view, CaptureFacts facts) {
    return !view.occlusal() && raw == null && up == null && facts.orientation() == null;
  }

  /** Why the picture waits if it can't be laid. */
  WaitReason reason(Outcome.Refused<Laid> refused) {
    return WaitReason.of(mirror == Mirror.UNKNOWN ? Kind.NO_MIRROR : Kind.ORIENTATION, refused);
  }
}
