package org.vestibule.quality;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.awt.image.ConvolveOp;
import java.awt.image.Kernel;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.Random;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.vestibule.base.Turn;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.jpeg.FrameSize;
import org.vestibule.jpeg.PreviewReading;

/** A drawn mouth, twice as large as the preview, to which known faults are added. */
final class MouthPicture {

  static final int WIDTH = 880;
  static final int HEIGHT = 660;
  static final FrameSize TWELVE_MEGAPIXELS = new FrameSize(4032, 3024);

  private static final Color GUMS = new Color(176, 92, 92);
  private static final Color TOOTH = new Color(214, 200, 172);

  private BufferedImage picture = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);

  /** Gums with eight teeth that cover 16 % of the picture, and fine grain from a seed. */
  MouthPicture(long seed) {
    rectangle(0, 0, WIDTH, HEIGHT, GUMS);
    for (int i = 0; i < 8; i++) {
      rectangle(80 + i * 90, 250, 80, 144, TOOTH);
    }
    Random random = new Random(seed);
    for (int y = 0; y < HEIGHT; y++) {
      for (int x = 0; x < WIDTH; x++) {
        int grain = random.nextInt(9) - 4;
        // No channel comes near its end, so that none carries over.
        picture.setRGB(x, y, picture.getRGB(x, y) + grain * 0x010101);
      }
    }
  }

  MouthPicture rectangle(int x, int y, int width, int height, Color colour) {
    Graphics2D pen = picture.createGraphics();
    pen.setColor(colour);
    pen.fillRect(x, y, width, height);
    pen.dispose();
    return this;
  }

  /** Blurred by a square of so many samples. */
  MouthPicture blurred(int side) {
    float[] weights = new float[side];
    Arrays.fill(weights, 1f / side);
    BufferedImage across =
        new ConvolveOp(new Kernel(side, 1, weights), ConvolveOp.EDGE_NO_OP, null)
            .filter(picture, null);
    picture =
        new ConvolveOp(new Kernel(1, side, weights), ConvolveOp.EDGE_NO_OP, null)
            .filter(across, null);
    return this;
  }

  /** Turned about its middle, clockwise, by so many degrees; gums come in at the corners. */
  MouthPicture tilted(double degrees) {
    BufferedImage turned = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = turned.createGraphics();
    pen.setColor(GUMS);
    pen.fillRect(0, 0, WIDTH, HEIGHT);
    pen.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
    pen.drawImage(
        picture,
        AffineTransform.getRotateInstance(Math.toRadians(degrees), WIDTH / 2.0, HEIGHT / 2.0),
        null);
    pen.dispose();
    picture = turned;
    return this;
  }

  /** The picture as a JPEG file, seen as the program sees it. */
  PreviewReading read() {
    return PreviewReading.of(jpeg(), QualityAdvice.PREVIEW_SIDE, Turn.NONE).orThrow();
  }

  LookedAt lookedAt() {
    PreviewReading reading = read();
    return new LookedAt(
        CaptureFacts.NONE,
        TWELVE_MEGAPIXELS,
        reading.preview(),
        reading.facts(),
        Subject.LEVEL_ROW);
  }

  Sharpness sharpness() {
    PreviewReading reading = read();
    return Sharpness.of(reading.preview(), reading.facts(), TWELVE_MEGAPIXELS);
  }

  private byte[] jpeg() {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      ImageWriteParam how = writer.getDefaultWriteParam();
      how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      how.setCompressionQuality(0.95f);
      writer.setOutput(out);
      writer.write(null, new IIOImage(picture, null, null), how);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }
}
