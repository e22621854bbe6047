package org.vestibule.flow.look;

import java.util.Base64;
import java.util.function.Supplier;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;
import org.vestibule.intake.Photo;
import org.vestibule.jpeg.Preview;
import org.vestibule.jpeg.Raster;
import org.vestibule.release.SmallJpeg;

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
    return new Thumbnail(
        "data:image/jpeg;base64," + Base64.getEncoder().encodeToString(SmallJpeg.of(raster)),
        raster.width(),
        raster.height());
  }
}
