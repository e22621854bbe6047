package org.vestibule.card;

import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;

/**
 * A card's text as a QR code of the highest error correction (ISO/IEC 18004, level H): up to 30 %
 * of it may be lost in glare.
 */
final class Symbol {

  /** Light modules that must surround a code (ISO/IEC 18004; from memory). */
  static final int QUIET = 4;

  private final ByteMatrix modules;

  private Symbol(ByteMatrix modules) {
    this.modules = modules;
  }

  /** The code of a text that {@link CardText} made. */
  static Symbol of(String text) {
    return of(text, ErrorCorrectionLevel.H);
  }

  /** The code of an address on a screen, where nothing glares and few modules are large ones. */
  static Symbol ofLink(String address) {
    return of(address, ErrorCorrectionLevel.M);
  }

  private static Symbol of(String text, ErrorCorrectionLevel level) {
    try {
      return new Symbol(Encoder.encode(text, level).getMatrix());
    } catch (WriterException e) {
      throw new IllegalStateException("the text did not fit into a code", e);
    }
  }

  /** Modules along an edge, without the light ones around it. */
  int side() {
    return modules.getWidth();
  }

  boolean dark(int column, int row) {
    return modules.get(column, row) == 1;
  }
}
