package org.vestibule.card;

import com.google.zxing.Binarizer;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.LuminanceSource;
import com.google.zxing.NotFoundException;
import com.google.zxing.PlanarYUVLuminanceSource;
import com.google.zxing.Result;
import com.google.zxing.ResultPoint;
import com.google.zxing.common.GlobalHistogramBinarizer;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.multi.qrcode.QRCodeMultiReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.vestibule.jpeg.GrayRaster;

/** Reads all QR codes in a small picture. */
final class CodeReader {

  private static final Map<DecodeHintType, Object> HINTS = Map.of(DecodeHintType.TRY_HARDER, true);

  /** What a foreign code is taken to have; only its marks' whereabouts follow from it. */
  private static final int FOREIGN_SIDE = 29;

  private CodeReader() {}

  /** The codes that could be read, their places in samples of the picture. */
  static List<CodeRead> read(GrayRaster picture) {
    LuminanceSource source =
        new PlanarYUVLuminanceSource(
            picture.samples(),
            picture.width(),
            picture.height(),
            0,
            0,
            picture.width(),
            picture.height(),
            false);
    List<CodeRead> read = read(new HybridBinarizer(source));
    return read.isEmpty() ? read(new GlobalHistogramBinarizer(source)) : read;
  }

  private static List<CodeRead> read(Binarizer binarizer) {
    List<CodeRead> codes = new ArrayList<>();
    try {
      for (Result result :
          new QRCodeMultiReader().decodeMultiple(new BinaryBitmap(binarizer), HINTS)) {
        codes.add(of(result));
      }
    } catch (NotFoundException none) {
      return List.of();
    }
    return codes;
  }

  private static CodeRead of(Result result) {
    ResultPoint[] points = result.getResultPoints();
    String text = result.getText();
    int side = CardText.isCard(text) ? Symbol.of(text).side() : FOREIGN_SIDE;
    return new CodeRead(text, point(points[1]), point(points[2]), point(points[0]), side);
  }

  private static CodeRead.Point point(ResultPoint point) {
    return new CodeRead.Point(point.getX(), point.getY());
  }
}
