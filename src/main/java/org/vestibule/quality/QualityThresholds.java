package org.vestibule.quality;

/**
 * From where on something is worth a word. A practice may set its own.
 *
 * @param zoomRatio digital zoom above this (common practice, no source: 2)
 * @param burntOutShare share of the tooth-coloured pixels that may be burnt out, 0 to 1 (proposal,
 *     no source: 0.01)
 * @param glareShare share of the picture that may be covered by reflections, 0 to 1 (proposal, no
 *     source: 0.01)
 * @param sharpnessShare smallest part of its series' median sharpness, coarse or fine, 0 to 1
 *     (proposal, no source: 0.35; Pertuz et al. 2013 names the measure and no limit)
 * @param seriesAtLeast how many other photographs a series must have to compare with, 1 or more
 *     (proposal, no source: 2)
 * @param castDifference CIEDE2000 difference of a grey card from grey (1.8: half of the observers
 *     no longer accept it between teeth, Paravina et al. 2015)
 * @param megapixels smallest frame in millions of pixels (5: guidelines of professional bodies)
 * @param tiltDegrees slant of a row of teeth, 0 to 45 (3: raters accept 2 degrees and mark down 4,
 *     published, from memory; the limit lies between, so that a measure that is a degree off stays
 *     on the right side)
 */
public record QualityThresholds(
    double zoomRatio,
    double burntOutShare,
    double glareShare,
    double sharpnessShare,
    int seriesAtLeast,
    double castDifference,
    double megapixels,
    double tiltDegrees) {

  /** Those that hold where a practice sets none. */
  public static final QualityThresholds USUAL =
      new QualityThresholds(2, 0.01, 0.01, 0.35, 2, 1.8, 5, 3);

  public QualityThresholds {
    require(zoomRatio >= 1, "zoomRatio must be 1 or more but was " + zoomRatio);
    requireShare(burntOutShare, "burntOutShare");
    requireShare(glareShare, "glareShare");
    requireShare(sharpnessShare, "sharpnessShare");
    require(seriesAtLeast >= 1, "seriesAtLeast must be 1 or more but was " + seriesAtLeast);
    require(castDifference >= 0, "castDifference must be 0 or more but was " + castDifference);
    require(megapixels >= 0, "megapixels must be 0 or more but was " + megapixels);
    require(
        tiltDegrees >= 0 && tiltDegrees <= 45,
        "tiltDegrees must be 0 to 45 but was " + tiltDegrees);
  }

  private static void requireShare(double value, String name) {
    require(value >= 0 && value <= 1, name + " must be 0 to 1 but was " + value);
  }

  private static void require(boolean condition, String message) {
    if (!condition) {
      throw new IllegalArgumentException(message);
    }
  }
}
