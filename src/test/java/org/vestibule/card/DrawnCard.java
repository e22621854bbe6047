package org.vestibule.card;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;

/** A printed card as a picture, at several sizes: each half of the one before. */
record DrawnCard(Card card, List<Level> levels) {

  private static final int DPI = 300;

  /** One size; rows of samples, 0 to 255. */
  static final class Level {

    private final int width;
    private final int height;
    private final float[] samples;

    Level(int width, int height, float[] samples) {
      this.width = width;
      this.height = height;
      this.samples = samples.clone();
    }

    /** Between samples interpolated; places from 0 to 1. */
    float at(double across, double down) {
      double x = Math.max(0, Math.min(width - 1.001, across * width - 0.5));
      double y = Math.max(0, Math.min(height - 1.001, down * height - 0.5));
      int left = (int) x;
      int top = (int) y;
      float fx = (float) (x - left);
      float fy = (float) (y - top);
      int at = top * width + left;
      float upper = samples[at] + fx * (samples[at + 1] - samples[at]);
      float lower = samples[at + width] + fx * (samples[at + width + 1] - samples[at + width]);
      return upper + fy * (lower - upper);
    }

    Level halved() {
      int wide = width / 2;
      int high = height / 2;
      float[] half = new float[wide * high];
      for (int y = 0; y < high; y++) {
        for (int x = 0; x < wide; x++) {
          int at = 2 * y * width + 2 * x;
          half[y * wide + x] =
              (samples[at] + samples[at + 1] + samples[at + width] + samples[at + width + 1]) / 4;
        }
      }
      return new Level(wide, high, half);
    }
  }

  /** The first cards of a drawn sheet. */
  static List<DrawnCard> of(CardSheet sheet, List<? extends Card> cards) {
    List<DrawnCard> drawn = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(sheet.pdf())) {
      PDFRenderer renderer = new PDFRenderer(document);
      BufferedImage page = null;
      for (int i = 0; i < cards.size(); i++) {
        if (i % 4 == 0) {
          page = renderer.renderImageWithDPI(i / 4, DPI, ImageType.GRAY);
        }
        int width = page.getWidth() / 2;
        int height = page.getHeight() / 2;
        drawn.add(
            new DrawnCard(
                cards.get(i), levels(page, i % 2 * width, i % 4 / 2 * height, width, height)));
      }
      return drawn;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<Level> levels(BufferedImage page, int left, int top, int width, int height) {
    float[] samples = new float[width * height];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        samples[y * width + x] = page.getRaster().getSample(left + x, top + y, 0);
      }
    }
    List<Level> levels = new ArrayList<>(List.of(new Level(width, height, samples)));
    while (levels.get(levels.size() - 1).width > 40) {
      levels.add(levels.get(levels.size() - 1).halved());
    }
    return levels;
  }

  /** The size whose samples are about as large as the picture's. */
  Level level(double widthSamples) {
    for (Level level : levels) {
      if (level.width < 1.5 * widthSamples) {
        return level;
      }
    }
    return levels.get(levels.size() - 1);
  }
}
