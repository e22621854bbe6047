package org.vestibule.quality;

import java.util.List;
import java.util.Optional;
import org.vestibule.base.Outcome;
import org.vestibule.dental.Series;
import org.vestibule.dental.View;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.jpeg.Raster;

/**
 * What can be said about the quality of one photograph.
 *
 * @param findings what could be better, in the order of {@link QualityKind}
 * @param unmeasured what was not looked at, and why
 * @param sharpness to be kept, so that later photographs can be compared with this one
 */
public record QualityAdvice(
    List<QualityFinding> findings, List<Unmeasured> unmeasured, Sharpness sharpness) {

  /** The scale of all measures: longer side of the preview in pixels. */
  public static final int PREVIEW_SIDE = 440;

  public QualityAdvice {
    findings = List.copyOf(findings);
    unmeasured = List.copyOf(unmeasured);
  }

  /**
   * Looks at a photograph.
   *
   * @param series sharpness of the other photographs of the same visit and {@link #seriesKind}
   */
  public static QualityAdvice of(
      LookedAt photo, List<Sharpness> series, QualityThresholds thresholds) {
    return of(
        photo.facts(),
        Measured.of(photo.preview(), photo.picture(), photo.frame()),
        photo.subject(),
        series,
        thresholds);
  }

  /**
   * Judges what was measured of a photograph in which nobody marked a grey card, before anything is
   * known of its series.
   *
   * @param facts what the camera wrote
   * @param subject what it shows
   */
  public static QualityAdvice of(
      CaptureFacts facts, Measured measured, Subject subject, QualityThresholds thresholds) {
    return of(facts, measured, subject, List.of(), thresholds);
  }

  private static QualityAdvice of(
      CaptureFacts facts,
      Measured measured,
      Subject subject,
      List<Sharpness> series,
      QualityThresholds thresholds) {
    Judging judging = new Judging(thresholds);
    judging.zoom(facts, measured.frame());
    judging.bright(measured, subject);
    judging.blur(measured.sharpness(), series);
    judging.colour();
    judging.pixels(measured.frame());
    judging.tilt(measured.row(), subject);
    return new QualityAdvice(judging.findings, judging.unmeasured, measured.sharpness());
  }

  /**
   * Judges a photograph's colours by a grey card.
   *
   * @param preview the photograph small, as it is shown
   * @param card where a person found the card in it
   * @return how far the card is from grey; refused if what lies there is no card that can be judged
   */
  public static Outcome<CardColour> colour(
      Raster preview, GreyCard card, QualityThresholds thresholds) {
    return new Judging(thresholds).cast(GreyPatch.of(preview, card));
  }

  /**
   * Compares a photograph's sharpness again when its series has grown.
   *
   * @return the finding; empty if it is sharp enough, or if there is too little to compare with
   */
  public static Optional<QualityFinding> blur(
      Sharpness own, List<Sharpness> series, QualityThresholds thresholds) {
    Judging judging = new Judging(thresholds);
    judging.blur(own, series);
    return judging.findings.stream().findFirst();
  }

  /**
   * Photographs are compared within a visit if this is equal: the views of the usual series by what
   * they show, every other view only with itself, since some show little detail by nature.
   */
  public static String seriesKind(View view) {
    if (view.showsFace()) {
      return "face";
    }
    boolean usual =
        view.series().contains(Series.BASELINE) || view.series().contains(Series.ORTHODONTIC);
    if (!usual) {
      return view.key();
    }
    return view.occlusal() ? "occlusal" : "arches";
  }

  /** True if this was looked at. */
  public boolean measured(QualityKind kind) {
    return unmeasured.stream().noneMatch(missing -> missing.kind() == kind);
  }

  /** The finding of a kind. */
  public Optional<QualityFinding> finding(QualityKind kind) {
    return findings.stream().filter(found -> found.kind() == kind).findFirst();
  }
}
