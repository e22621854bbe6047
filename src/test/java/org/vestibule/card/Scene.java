package org.vestibule.card;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Random;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;

/** An invented photograph: a background, cards held into it, and what a camera does to it. */
final class Scene {

  private static final int CELLS = 24;

  private final Random random;
  private final int width;
  private final int height;
  private final BufferedImage image;
  private final int[] rgb;

  Scene(int width, Random random) {
    this.random = random;
    this.width = width;
    this.height = width * 3 / 4;
    this.image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    this.rgb = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
    background();
  }

  double between(double least, double most) {
    return least + random.nextDouble() * (most - least);
  }

  private void background() {
    Graphics2D pen = image.createGraphics();
    pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    pen.setPaint(new GradientPaint(0, 0, shade(90, 200), width, height, shade(60, 170)));
    pen.fillRect(0, 0, width, height);
    switch (random.nextInt(6)) {
      case 0 -> mouth(pen);
      case 1 -> cloth(pen);
      case 2 -> tools(pen);
      case 3 -> print(pen);
      case 4 -> rings(pen);
      default -> {}
    }
    pen.dispose();
  }

  private Color shade(int least, int most) {
    int gray = least + random.nextInt(most - least);
    return new Color(gray, clamp(gray - 10 + random.nextInt(20)), clamp(gray - 25));
  }

  /** Rows of light teeth before dark and red. */
  private void mouth(Graphics2D pen) {
    pen.setColor(new Color(150, 70, 70));
    pen.fill(new Ellipse2D.Double(width * .05, height * .1, width * .9, height * .8));
    pen.setColor(new Color(40, 15, 15));
    pen.fill(new Ellipse2D.Double(width * .15, height * .35, width * .7, height * .3));
    for (int row = 0; row < 2; row++) {
      for (int i = 0; i < 10; i++) {
        int gray = 190 + random.nextInt(50);
        pen.setColor(new Color(gray, gray - 8, gray - 30));
        double x = width * (.15 + .07 * i);
        double y = height * (row == 0 ? .28 : .52) - Math.abs(i - 4.5) * (row == 0 ? -8 : 8);
        pen.fill(new Ellipse2D.Double(x, y, width * .066, height * .2));
        pen.setColor(Color.WHITE);
        pen.fill(new Ellipse2D.Double(x + width * .02, y + height * .05, width * .01, 30));
      }
    }
  }

  /** A checked cloth. */
  private void cloth(Graphics2D pen) {
    int square = width / (20 + random.nextInt(80));
    pen.setColor(shade(20, 80));
    for (int y = 0; y < height; y += square) {
      for (int x = (y / square % 2) * square; x < width; x += 2 * square) {
        pen.fillRect(x, y, square, square);
      }
    }
  }

  /** Bright instruments on a tray. */
  private void tools(Graphics2D pen) {
    for (int i = 0; i < 14; i++) {
      pen.setColor(shade(i % 2 == 0 ? 200 : 20, i % 2 == 0 ? 255 : 80));
      pen.setStroke(new BasicStroke((float) (width * between(.002, .02))));
      Path2D path = new Path2D.Double();
      path.moveTo(between(0, width), between(0, height));
      path.curveTo(
          between(0, width),
          between(0, height),
          between(0, width),
          between(0, height),
          between(0, width),
          between(0, height));
      pen.draw(path);
    }
  }

  /** A printed page: lines of small dark boxes. */
  private void print(Graphics2D pen) {
    pen.setColor(new Color(235, 232, 225));
    pen.fillRect(width / 10, height / 10, width * 8 / 10, height * 8 / 10);
    pen.setColor(new Color(30, 30, 35));
    int line = height / (30 + random.nextInt(40));
    for (int y = height / 8; y < height * 7 / 8; y += line) {
      int x = width / 8;
      while (x < width * 7 / 8) {
        int word = line / 4 + random.nextInt(line);
        pen.fillRect(x, y, word, line / 2);
        x += word + line / 4;
      }
    }
  }

  /** Circles within circles, in many sizes: eyes, lamps, mirrors. */
  private void rings(Graphics2D pen) {
    for (int i = 0; i < 25; i++) {
      double size = width * between(.01, .15);
      double x = between(0, width);
      double y = between(0, height);
      for (double share : new double[] {1, .7, .42, .14}) {
        pen.setColor(
            shade(share == 1 || share == .42 ? 15 : 190, share == 1 || share == .42 ? 70 : 255));
        pen.fill(
            new Ellipse2D.Double(
                x - size * share / 2, y - size * share / 2, size * share, size * share));
      }
    }
  }

  /** Where a card is and how it lies; angles in radians, lengths in shares of the frame's width. */
  record Pose(
      double x, double y, double share, double yaw, double pitch, double roll, double radius) {}

  /**
   * Holds a card into the picture.
   *
   * @param glare centre across and down, radius, all in shares of the card's width; null without
   */
  void hold(DrawnCard card, Pose pose, double[] glare) {
    DrawnCard.Level level = card.level(pose.share * width);
    double[][] mesh = new double[(CELLS + 1) * (CELLS + 1)][];
    for (int j = 0; j <= CELLS; j++) {
      for (int i = 0; i <= CELLS; i++) {
        mesh[j * (CELLS + 1) + i] = project(pose, i / (double) CELLS, j / (double) CELLS);
      }
    }
    double tint = between(.92, 1);
    for (int j = 0; j < CELLS; j++) {
      for (int i = 0; i < CELLS; i++) {
        int at = j * (CELLS + 1) + i;
        double[][] corners = {mesh[at], mesh[at + 1], mesh[at + CELLS + 2], mesh[at + CELLS + 1]};
        triangle(level, corners[0], corners[1], corners[2], glare, tint);
        triangle(level, corners[0], corners[2], corners[3], glare, tint);
      }
    }
  }

  /** A camera two card widths away; a bent card lies on a cylinder. Gives x, y, u, v. */
  private double[] project(Pose pose, double u, double v) {
    double x = u - .5;
    double y = (v - .5) * CardLayout.HEIGHT / CardLayout.WIDTH;
    double z = 0;
    if (pose.radius > 0) {
      double angle = x / pose.radius;
      x = pose.radius * Math.sin(angle);
      z = pose.radius * (1 - Math.cos(angle));
    }
    double x1 = x * Math.cos(pose.yaw) + z * Math.sin(pose.yaw);
    double z1 = -x * Math.sin(pose.yaw) + z * Math.cos(pose.yaw);
    double y2 = y * Math.cos(pose.pitch) - z1 * Math.sin(pose.pitch);
    double z2 = y * Math.sin(pose.pitch) + z1 * Math.cos(pose.pitch);
    double x3 = x1 * Math.cos(pose.roll) - y2 * Math.sin(pose.roll);
    double y3 = x1 * Math.sin(pose.roll) + y2 * Math.cos(pose.roll);
    double scale = pose.share * width * 2 / (2 + z2);
    return new double[] {pose.x * width + x3 * scale, pose.y * height + y3 * scale, u, v};
  }

  private void triangle(
      DrawnCard.Level level, double[] a, double[] b, double[] c, double[] glare, double tint) {
    double area = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
    if (area <= 0) {
      return;
    }
    int left = (int) Math.max(0, Math.floor(Math.min(a[0], Math.min(b[0], c[0]))));
    int right = (int) Math.min(width - 1, Math.ceil(Math.max(a[0], Math.max(b[0], c[0]))));
    int top = (int) Math.max(0, Math.floor(Math.min(a[1], Math.min(b[1], c[1]))));
    int bottom = (int) Math.min(height - 1, Math.ceil(Math.max(a[1], Math.max(b[1], c[1]))));
    for (int y = top; y <= bottom; y++) {
      for (int x = left; x <= right; x++) {
        double wb = ((x - a[0]) * (c[1] - a[1]) - (y - a[1]) * (c[0] - a[0])) / area;
        double wc = ((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])) / area;
        if (wb < 0 || wc < 0 || wb + wc > 1) {
          continue;
        }
        double u = a[2] + wb * (b[2] - a[2]) + wc * (c[2] - a[2]);
        double v = a[3] + wb * (b[3] - a[3]) + wc * (c[3] - a[3]);
        double ink = 22 + level.at(u, v) / 255 * 205 * tint;
        if (glare != null) {
          double dx = u - glare[0];
          double dy = v * CardLayout.HEIGHT / CardLayout.WIDTH - glare[1];
          double away = (dx * dx + dy * dy) / (glare[2] * glare[2]);
          ink += 420 * Math.exp(-2 * away * away);
        }
        int gray = clamp((int) ink);
        rgb[y * width + x] = gray << 16 | gray << 8 | clamp((int) (gray * .95));
      }
    }
  }

  /** Darker, with noise of the sensor. */
  void dim(double light, double noise) {
    int[] table = new int[1 << 12];
    for (int i = 0; i < table.length; i++) {
      table[i] = (int) Math.round(random.nextGaussian() * noise);
    }
    long state = random.nextLong() | 1;
    for (int i = 0; i < rgb.length; i++) {
      state = state * 6364136223846793005L + 1442695040888963407L;
      int add = table[(int) (state >>> 52)];
      int red = clamp((int) ((rgb[i] >> 16) * light) + add);
      int green = clamp((int) ((rgb[i] >> 8 & 0xFF) * light) + add);
      int blue = clamp((int) ((rgb[i] & 0xFF) * light) + add);
      rgb[i] = red << 16 | green << 8 | blue;
    }
  }

  /** Blurred three times by a box: nearly a Gauss; downwards less if it is shaken. */
  void blur(double across, double down) {
    for (int i = 0; i < 3; i++) {
      boxes((int) Math.round(across), true);
      boxes((int) Math.round(down), false);
    }
  }

  private void boxes(int radius, boolean along) {
    if (radius < 1) {
      return;
    }
    int lines = along ? height : width;
    int length = along ? width : height;
    int step = along ? 1 : width;
    int[] line = new int[length];
    for (int l = 0; l < lines; l++) {
      int start = along ? l * width : l;
      for (int i = 0; i < length; i++) {
        line[i] = rgb[start + i * step];
      }
      int red = 0;
      int green = 0;
      int blue = 0;
      for (int i = -radius; i < length; i++) {
        int in = line[Math.min(length - 1, i + radius)];
        red += in >> 16;
        green += in >> 8 & 0xFF;
        blue += in & 0xFF;
        int span = 2 * radius + 1;
        if (i + radius >= span) {
          int out = line[Math.max(0, i - radius - 1)];
          red -= out >> 16;
          green -= out >> 8 & 0xFF;
          blue -= out & 0xFF;
        }
        if (i >= 0) {
          int count = Math.min(span, i + radius + 1);
          rgb[start + i * step] = ((red / count) << 16) | ((green / count) << 8) | (blue / count);
        }
      }
    }
  }

  /** The picture as its mirror image. */
  void mirror() {
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width / 2; x++) {
        int left = rgb[y * width + x];
        rgb[y * width + x] = rgb[y * width + width - 1 - x];
        rgb[y * width + width - 1 - x] = left;
      }
    }
  }

  private static int clamp(int value) {
    return Math.max(0, Math.min(255, value));
  }

  /**
   * The picture as a JPEG file.
   *
   * @param quality 0 to 1
   */
  byte[] jpeg(double quality) {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ImageOutputStream out = ImageIO.createImageOutputStream(bytes)) {
      ImageWriteParam how = writer.getDefaultWriteParam();
      how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      how.setCompressionQuality((float) quality);
      writer.setOutput(out);
      writer.write(null, new IIOImage(image, null, null), how);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }
}
