package org.vestibule.samples;

import java.awt.image.BufferedImage;

/** The invented camera roll. */
public final class SampleRoll {

  private SampleRoll() {}

  /** One scene in true hand at a size that keeps tests quick. */
  public static BufferedImage picture(Scene scene) {
    return scene.draw(320, 240);
  }

  /** One scene in true hand at any size. */
  public static BufferedImage picture(Scene scene, int width, int height) {
    return scene.draw(width, height);
  }
}
