package org.vestibule.jpeg;

import org.jspecify.annotations.Nullable;

/**
 * Decodes the first picture of a file to tokens, once and fast.
 *
 * <p>It takes sound pictures only. Whatever is odd or damaged in a scan it leaves to the plain
 * decoder, whose word counts: that either finds the fault and its place, or reads the picture in
 * spite of it.
 */
final class TokenDecoder extends PictureWalk {

  private final TokenPicture picture;
  private @Nullable PlainScan plainScan;

  private TokenDecoder(byte[] bytes, JpegStructure structure, boolean transposed) {
    super(bytes, structure);
    this.picture = new TokenPicture(structure, transposed);
  }

  /**
   * Decodes; whatever is damaged, cut short or unsuited is thrown as a fault.
   *
   * @param transposed true if rows and columns are to change places
   */
  static TokenPicture decode(byte[] bytes, boolean transposed) throws JpegFault {
    JpegStructure structure = JpegStructure.readOrFail(bytes);
    PictureLimits.check(structure);
    if (!structure.progressive()) {
      try {
        return sequential(bytes, structure, transposed);
      } catch (JpegFault fault) {
        // Found again, and told in more words, below.
      }
    }
    return CoefficientTokens.of(PictureDecoder.decode(bytes, structure), transposed);
  }

  private static TokenPicture sequential(byte[] bytes, JpegStructure structure, boolean transposed)
      throws JpegFault {
    TokenDecoder decoder = new TokenDecoder(bytes, structure, transposed);
    decoder.segments();
    decoder.requireWhole();
    TokenPicture picture = decoder.picture;
    for (int i = 0; i < picture.planes.size(); i++) {
      picture.planes.get(i).quantisation = decoder.quantisation(i);
    }
    picture.plainScan = decoder.plainScan;
    return picture;
  }

  @Override
  void scan(ScanHeader header, JpegSegment segment) throws JpegFault {
    int count = header.components().size();
    TokenPlane[] planes = new TokenPlane[count];
    LookupTable[] dc = new LookupTable[count];
    LookupTable[] ac = new LookupTable[count];
    for (int i = 0; i < count; i++) {
      ScanHeader.Part part = header.components().get(i);
      planes[i] = picture.planes.get(part.index());
      dc[i] = new LookupTable(tables.dcTable(part.dcTable()));
      ac[i] = new LookupTable(tables.acTable(part.acTable()));
      for (int k = 0; k < i; k++) {
        if (header.components().get(k).acTable() == part.acTable()) {
          ac[i] = ac[k];
        }
      }
    }
    ScanBits in = new ScanBits(bytes, segment.dataEnd(), segment.codedEnd());
    SequentialTokens blocks = new SequentialTokens(in, picture.tokens, picture.transposed, count);
    new TokenScan(frame, planes, dc, ac, in, blocks, tables.restartInterval()).read();
    plainScan = blocks.beyondBaseline ? null : plainScan(header, segment);
  }
}
