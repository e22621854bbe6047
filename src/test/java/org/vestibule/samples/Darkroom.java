package org.vestibule.samples;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.function.IntUnaryOperator;

/** What goes wrong with a photograph, and what phones do to it. */
final class Darkroom {

  private Darkroom() {}

  /** Out of focus by so many samples. */
  static BufferedImage blurred(BufferedImage picture, int radius) {
    int width = picture.getWidth();
    int height = picture.getHeight();
    int[] result = new int[width * height];
    for (int shift = 0; shift <= 16; shift += 8) {
      float[] plane = new float[width * height];
      int[] samples = picture.getRGB(0, 0, width, height, null, 0, width);
      for (int i = 0; i < plane.length; i++) {
        plane[i] = samples[i] >> shift & 0xff;
      }
      plane = Blur.box(Blur.box(plane, width, height, radius), width, height, radius);
      for (int i = 0; i < plane.length; i++) {
        result[i] |= Math.round(plane[i]) << shift;
      }
    }
    BufferedImage out = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    out.setRGB(0, 0, width, height, result, 0, width);
    return out;
  }

  /** Flash too near: everything brighter, the bright gone to white. */
  static BufferedImage blownOut(BufferedImage picture) {
    return each(picture, value -> Math.min(255, 40 + value * 155 / 100));
  }

  /** As if a part so many times smaller had been made as large again: the same view, but soft. */
  static BufferedImage zoomed(BufferedImage picture, int times) {
    int width = picture.getWidth();
    int height = picture.getHeight();
    BufferedImage part = scaled(blurred(picture, times / 2), width / times, height / times);
    return scaled(part, width, height);
  }

  static BufferedImage scaled(BufferedImage picture, int width, int height) {
    BufferedImage out = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = out.createGraphics();
    pen.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
    pen.drawImage(picture, 0, 0, width, height, null);
    pen.dispose();
    return out;
  }

  /** One gray channel. */
  static BufferedImage gray(BufferedImage picture) {
    BufferedImage out =
        new BufferedImage(picture.getWidth(), picture.getHeight(), BufferedImage.TYPE_BYTE_GRAY);
    for (int y = 0; y < picture.getHeight(); y++) {
      for (int x = 0; x < picture.getWidth(); x++) {
        int rgb = picture.getRGB(x, y);
        int luma = (299 * (rgb >> 16 & 0xff) + 587 * (rgb >> 8 & 0xff) + 114 * (rgb & 0xff)) / 1000;
        out.getRaster().setSample(x, y, 0, luma);
      }
    }
    return out;
  }

  private static BufferedImage each(BufferedImage picture, IntUnaryOperator change) {
    BufferedImage out =
        new BufferedImage(picture.getWidth(), picture.getHeight(), BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < picture.getHeight(); y++) {
      for (int x = 0; x < picture.getWidth(); x++) {
        int rgb = picture.getRGB(x, y);
        out.setRGB(
            x,
            y,
            change.applyAsInt(rgb >> 16 & 0xff) << 16
                | change.applyAsInt(rgb >> 8 & 0xff) << 8
                | change.applyAsInt(rgb & 0xff));
      }
    }
    return out;
  }
}
