package org.vestibule.release;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.vestibule.jpeg.Raster;

/** A small picture coded from its pixels alone, for sheets and pages. */
public final class SmallJpeg {

  private static final float QUALITY = 0.8f;

  private SmallJpeg() {}

  /** The picture as a JPEG file that holds nothing but its pixels. */
  public static byte[] of(Raster raster) {
    BufferedImage image =
        new BufferedImage(raster.width(), raster.height(), BufferedImage.TYPE_INT_RGB);
    image.setRGB(0, 0, raster.width(), raster.height(), raster.rgb(), 0, raster.width());
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      ImageWriteParam how = writer.getDefaultWriteParam();
      how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      how.setCompressionQuality(QUALITY);
      writer.setOutput(out);
      writer.write(null, new IIOImage(image, null, null), how);
    } catch (IOException e) {
      throw new UncheckedIOException("a small picture could not be coded in memory", e);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }
}
