package org.vestibule.card;

import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import java.util.Arrays;
import java.util.List;

/** A QR code that is not a card's, on a poster. */
final class ForeignCode {

  private static final int WIDTH = 1480;
  private static final int HEIGHT = 1050;

  private ForeignCode() {}

  static DrawnCard drawn(String text) {
    try {
      ByteMatrix code = Encoder.encode(text, ErrorCorrectionLevel.M).getMatrix();
      float[] samples = new float[WIDTH * HEIGHT];
      Arrays.fill(samples, 255);
      int module = 28;
      for (int y = 0; y < code.getHeight() * module; y++) {
        for (int x = 0; x < code.getWidth() * module; x++) {
          if (code.get(x / module, y / module) == 1) {
            samples[(y + 120) * WIDTH + x + 400] = 0;
          }
        }
      }
      DrawnCard.Level whole = new DrawnCard.Level(WIDTH, HEIGHT, samples);
      DrawnCard.Level half = whole.halved();
      DrawnCard.Level quarter = half.halved();
      DrawnCard.Level eighth = quarter.halved();
      return new DrawnCard(new VisitCard(text), List.of(whole, half, quarter, eighth));
    } catch (WriterException e) {
      throw new IllegalStateException(e);
    }
  }
}
