package org.vestibule.samples;

import java.awt.image.BufferedImage;

/** What can be drawn, each in true hand and laid down as the trade shows it. */
public enum Scene {
  FACE_SMILING("face smiling", "L\\F"),
  FRONTAL("intraoral frontal", "L\\F"),
  RIGHT_BUCCAL("right buccal", "A\\F"),
  LEFT_BUCCAL("left buccal", "P\\F"),
  UPPER_OCCLUSAL("upper occlusal", "L\\P"),
  LOWER_OCCLUSAL("lower occlusal", "L\\A"),
  UPPER_ANTERIOR("upper anterior", "L\\F"),
  PALATAL_FRONT("palatal front", "R\\F"),
  TOOTH_16("single-tooth occlusal", "L\\P"),
  TOOTH_46_BEFORE("single-tooth occlusal", "L\\A"),
  TOOTH_46_AFTER("single-tooth occlusal", "L\\A"),
  LOWER_OCCLUSAL_AFTER("lower occlusal", "L\\A"),
  FRONTAL_SECOND("intraoral frontal", "L\\F"),
  CHILD_FRONTAL("intraoral frontal", "L\\F"),
  CHILD_UPPER("upper occlusal", "L\\P"),
  CHILD_LOWER("lower occlusal", "L\\A"),
  CHILD_RIGHT("right buccal", "A\\F"),
  SHADE("shade with tab", "L\\F"),
  MUG("", "L\\F");

  private final String words;
  private final String shownAs;

  Scene(String words, String shownAs) {
    this.words = words;
    this.shownAs = shownAs;
  }

  /** What people call the view; empty if it is none. */
  public String words() {
    return words;
  }

  /** How the picture lies: the patient's direction of image right and image down. */
  public RawState.Axes shownAs() {
    return RawState.Axes.of(shownAs);
  }

  /** The picture in true hand, at this size. */
  public BufferedImage draw(int width, int height) {
    Mouth marked = Mouth.marked();
    return switch (this) {
      case FACE_SMILING -> Cartoon.face(width, height);
      case FRONTAL -> FrontArt.frontal(marked).draw(width, height, 38);
      case RIGHT_BUCCAL -> FrontArt.rightBuccal(marked).draw(width, height, 36);
      case LEFT_BUCCAL -> FrontArt.leftBuccal(marked).draw(width, height, 36);
      case UPPER_OCCLUSAL -> new OcclusalArt(marked, true).whole(width, height);
      case LOWER_OCCLUSAL -> new OcclusalArt(marked, false).whole(width, height);
      case UPPER_ANTERIOR -> FrontArt.upperAnterior(marked).draw(width, height, 26);
      case PALATAL_FRONT -> FrontArt.upperPalatal(marked).draw(width, height, 28);
      case TOOTH_16 -> new OcclusalArt(marked, true).around(16, width, height);
      default -> drawOthers(width, height);
    };
  }

  private BufferedImage drawOthers(int width, int height) {
    Mouth after = Mouth.afterFilling();
    Mouth child = Mouth.child();
    return switch (this) {
      case TOOTH_46_BEFORE ->
          new OcclusalArt(Mouth.beforeFilling(), false).around(46, width, height);
      case TOOTH_46_AFTER -> new OcclusalArt(after, false).around(46, width, height);
      case LOWER_OCCLUSAL_AFTER -> new OcclusalArt(after, false).whole(width, height);
      case FRONTAL_SECOND -> FrontArt.frontal(after).draw(width, height, 38);
      case CHILD_FRONTAL -> FrontArt.frontal(child).draw(width, height, 28);
      case CHILD_UPPER -> new OcclusalArt(child, true).whole(width, height);
      case CHILD_LOWER -> new OcclusalArt(child, false).whole(width, height);
      case CHILD_RIGHT -> FrontArt.rightBuccal(child).draw(width, height, 26);
      case SHADE -> shade(width, height);
      case MUG -> Cartoon.mug(width, height);
      default -> throw new IllegalStateException("nobody draws " + this);
    };
  }

  private static BufferedImage shade(int width, int height) {
    BufferedImage picture = FrontArt.upperAnterior(Mouth.afterFilling()).draw(width, height, 26);
    Cartoon.shadeTab(picture, width * 0.395, height * 0.64, height / 74.0);
    return picture;
  }
}
