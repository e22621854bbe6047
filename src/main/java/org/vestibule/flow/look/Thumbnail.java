package org.vestibule.flow.look;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.function.Supplier;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;
import org.vestibule.intake.Photo;
import org.vestibule.jpeg.Preview;
import org.vestibule.jpeg.Raster;

/**
 * A small upright picture, coded anew from its pixels: nothing that hides in the photograph's file
 * is in it.
 *
 * @param dataUri the JPEG as a data URI (RFC 2397)
 * @param width width in pixels
 * @param height height in pixels
 */
public record Thumbnail(String dataUri, int width, int height) {

  /** Longer side in pixels: sharp at the width of a card on screen and in print. */
  static final int LONGER_SIDE = 440;

  private static final float QUALITY = 0.8f;

  /** The picture of a photograph as its Exif Orientation shows it upright. */
  public static SheetPicture of(Photo photo) {
    Integer orientation = photo.facts().orientation();
    Turn turn = Turn.asShown(orientation);
    return () ->
        photo
            .bytes()
            .then(bytes -> Preview.of(bytes, LONGER_SIDE, turn))
            .then(raster -> Outcome.done(of(raster)));
  }

  /** The picture of a JPEG whose bytes are fetched when the sheet reaches it, turned so. */
  public static SheetPicture of(Supplier<Outcome<byte[]>> jpeg, Turn turn) {
    return () ->
        jpeg.get()
            .then(bytes -> Preview.of(bytes, LONGER_SIDE, turn))
            .then(raster -> Outcome.done(of(raster)));
  }

  static Thumbnail of(Raster raster) {
    BufferedImage image =
        new BufferedImage(raster.width(), raster.height(), BufferedImage.TYPE_INT_RGB);
    image.setRGB(0, 0, raster.width(), raster.height(), raster.rgb(), 0, raster.width());
    return new Thumbnail(
        "data:image/jpeg;base64," + Base64.getEncoder().encodeToString(encode(image)),
        raster.width(),
        raster.height());
  }

  private static byte[] encode(BufferedImage image) {
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
