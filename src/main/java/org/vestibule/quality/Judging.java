package org.vestibule.quality;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.DoubleStream;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.jpeg.FrameSize;

/** Holds measures against thresholds and words what it finds. */
final class Judging {

  private static final double LEAST_TEETH = 0.01;
  private static final double MILLION = 1e6;

  /** A grey card must be exposed so that no channel is at its end (chosen, no source). */
  private static final int CARD_DARKEST = 20;

  private static final int CARD_BRIGHTEST = 245;

  /** Spread of the colours from which on something else than an even card was marked. */
  private static final double CARD_UNEVENNESS = 5;

  final List<QualityFinding> findings = new ArrayList<>();
  final List<Unmeasured> unmeasured = new ArrayList<>();
  private final QualityThresholds thresholds;

  Judging(QualityThresholds thresholds) {
    this.thresholds = thresholds;
  }

  void zoom(CaptureFacts facts, FrameSize frame) {
    Double ratio = facts.digitalZoomRatio();
    if (ratio == null) {
      skip(QualityKind.DIGITAL_ZOOM, "The file doesn't state a digital zoom.");
      return;
    }
    if (ratio > thresholds.zoomRatio()) {
      double left = frame.area() / MILLION / (ratio * ratio);
      find(
          QualityKind.DIGITAL_ZOOM,
          ratio,
          thresholds.zoomRatio(),
          String.format(
              Locale.ROOT,
              "It was taken with %.1fx digital zoom, more than %.1fx: of the frame's pixels only"
                  + " about %.1f million were seen by the lens, the rest is computed.",
              ratio,
              thresholds.zoomRatio(),
              left),
          "Go nearer, or use the phone's longer lens, and crop afterwards.");
    }
  }

  void bright(Measured measured, Subject subject) {
    if (subject == Subject.UNKNOWN || subject == Subject.FACE) {
      String reason =
          subject == Subject.UNKNOWN
              ? "The view is not known, so that it isn't known what is a tooth."
              : "A face shows too little of the teeth.";
      skip(QualityKind.BURNT_OUT_TEETH, reason);
      skip(QualityKind.GLARE, reason);
      return;
    }
    burntOut(measured);
    glare(measured);
  }

  private void burntOut(Measured measured) {
    if (measured.toothShare() < LEAST_TEETH) {
      skip(
          QualityKind.BURNT_OUT_TEETH,
          "Less than 1 % of the picture is as bright and as pale as teeth are.");
      return;
    }
    double share = measured.burntOutShare();
    if (share > thresholds.burntOutShare()) {
      find(
          QualityKind.BURNT_OUT_TEETH,
          share,
          thresholds.burntOutShare(),
          String.format(
              Locale.ROOT,
              "%.1f %% of what is tooth-coloured is burnt out to white, more than %.1f %%: surface"
                  + " and shade can't be judged there.",
              100 * share,
              100 * thresholds.burntOutShare()),
          "Take it again with less flash or from further away, or touch the brightest tooth on the"
              + " screen so that the phone exposes for it.");
    }
  }

  private void glare(Measured measured) {
    double share = measured.reflectedShare();
    if (share > thresholds.glareShare()) {
      find(
          QualityKind.GLARE,
          share,
          thresholds.glareShare(),
          String.format(
              Locale.ROOT,
              "Reflections cover %.1f %% of the picture, more than %.1f %%.",
              100 * share,
              100 * thresholds.glareShare()),
          "Dry the field, and light it from the side rather than from the lens.");
    }
  }

  void blur(Sharpness own, List<Sharpness> series) {
    List<Sharpness> others = series.stream().filter(own::comparable).toList();
    if (others.size() < thresholds.seriesAtLeast()) {
      skip(
          QualityKind.BLUR,
          "Sharpness can only be compared: "
              + thresholds.seriesAtLeast()
              + " other photographs of this kind and size in the visit are needed, there are "
              + others.size()
              + ".");
      return;
    }
    double part =
        Math.min(
            part(own.variance(), others.stream().mapToDouble(Sharpness::variance)),
            part(own.fine(), others.stream().mapToDouble(Sharpness::fine)));
    if (part < thresholds.sharpnessShare()) {
      find(
          QualityKind.BLUR,
          part,
          thresholds.sharpnessShare(),
          String.format(
              Locale.ROOT,
              "It has %.0f %% of the fine detail that is usual in its series, less than %.0f %%:"
                  + " perhaps it is out of focus or moved.",
              100 * part,
              100 * thresholds.sharpnessShare()),
          "Look at it in full size; take it again if the patient is still there.");
    }
  }

  /** A value as a part of the others' median; 1 if they have none. */
  private static double part(double own, DoubleStream others) {
    double[] sorted = others.sorted().toArray();
    int middle = sorted.length / 2;
    double median =
        sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    return median == 0 ? 1 : own / median;
  }

  void colour() {
    skip(
        QualityKind.COLOUR_CAST,
        "Colour can only be judged against a grey card, and nobody marked one.");
  }

  Outcome<CardColour> cast(GreyPatch patch) {
    if (patch.darkest() < CARD_DARKEST || patch.brightest() > CARD_BRIGHTEST) {
      return Outcome.refused(
          "the grey card is too dark or too bright there to be judged",
          "mark another spot of it, or photograph it again in the light of the teeth");
    }
    if (patch.unevenness() > CARD_UNEVENNESS) {
      return Outcome.refused(
          "what is marked is not an even grey card",
          "mark the card alone, away from its edges and from reflections");
    }
    double cast = patch.cast();
    if (cast > thresholds.castDifference()) {
      find(
          QualityKind.COLOUR_CAST,
          cast,
          thresholds.castDifference(),
          String.format(
              Locale.ROOT,
              "The grey card looks %s: %.1f (CIEDE2000) from grey, more than %.1f.",
              patch.direction(),
              cast,
              thresholds.castDifference()),
          "Compare no shades by this photograph; set the phone's white balance by the card.");
    }
    return Outcome.done(new CardColour(cast, findings.stream().findFirst()));
  }

  void pixels(FrameSize frame) {
    double millions = frame.area() / MILLION;
    if (millions < thresholds.megapixels()) {
      find(
          QualityKind.FEW_PIXELS,
          millions,
          thresholds.megapixels(),
          String.format(
              Locale.ROOT,
              "The frame has %.1f million pixels, fewer than %.1f million.",
              millions,
              thresholds.megapixels()),
          "If it came through a messenger, send the original file; otherwise set the phone to its"
              + " full size.");
    }
  }

  void tilt(@Nullable ToothRow row, Subject subject) {
    if (subject != Subject.LEVEL_ROW) {
      skip(
          QualityKind.TILT,
          "Only a row of teeth from the front shows whether the phone was level: a file doesn't"
              + " state it, and faces are not recognised.");
      return;
    }
    if (row == null || !row.isRow()) {
      skip(
          QualityKind.TILT,
          "No long row of teeth lies in the middle of the picture, so that nothing shows what is"
              + " level.");
      return;
    }
    if (row.degrees() > thresholds.tiltDegrees()) {
      find(
          QualityKind.TILT,
          row.degrees(),
          thresholds.tiltDegrees(),
          String.format(
              Locale.ROOT,
              "The row of teeth slants by %.1f degrees, more than %.1f: the phone was tilted, or the"
                  + " bite itself slants.",
              row.degrees(),
              thresholds.tiltDegrees()),
          "Look at the patient. If the bite is level, hold the phone level with it and take it again;"
              + " nothing is straightened by the program.");
    }
  }

  private void find(
      QualityKind kind, double measured, double threshold, String sentence, String whatToDo) {
    findings.add(new QualityFinding(kind, measured, threshold, sentence, whatToDo));
  }

  private void skip(QualityKind kind, String reason) {
    unmeasured.add(new Unmeasured(kind, reason));
  }
}
