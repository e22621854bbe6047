package org.vestibule.jpeg;

import org.jspecify.annotations.Nullable;

/** Decodes sequential pictures to tokens, once and fast; those whose scans are sound and tidy. */
final class TokenDecoder extends PictureWalk {

  private final TokenPicture picture;
  private @Nullable PlainScan plainScan;

  private TokenDecoder(byte[] bytes, TokenPicture picture) {
    super(bytes, picture.structure);
    this.picture = picture;
  }

  /** Decodes only to see whether the scans are sound; the tokens are forgotten. */
  static TokenPicture check(byte[] bytes, JpegStructure structure) throws JpegFault {
    return decode(bytes, new TokenPicture(structure, false, Tokens.forgetting()));
  }

  /**
   * Decodes into a picture that is empty yet; whatever is damaged, cut short, odd or unsuited is
   * thrown as a fault.
   */
  static TokenPicture decode(byte[] bytes, TokenPicture picture) throws JpegFault {
    new TokenDecoder(bytes, picture).decode();
    return picture;
  }

  private void decode() throws JpegFault {
    segments();
    requireWhole();
    for (int i = 0; i < picture.planes.size(); i++) {
      picture.planes.get(i).quantisation = quantisation(i);
    }
    picture.plainScan = plainScan;
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
      dc[i] = LookupTable.of(tables.dcTable(part.dcTable()));
      ac[i] = acTable(header, ac, i);
    }
    ScanBits in = new ScanBits(bytes, segment.dataEnd(), segment.codedEnd());
    SequentialTokens blocks = new SequentialTokens(in, picture.tokens, picture.transposed, count);
    new TokenScan(frame, planes, dc, ac, in, blocks, tables.restartInterval()).read();
    plainScan = blocks.beyondBaseline ? null : plainScan(header, segment);
  }

  /** Components that share a table share its look-ups. */
  private LookupTable acTable(ScanHeader header, LookupTable[] made, int part) throws JpegFault {
    int selector = header.components().get(part).acTable();
    for (int i = 0; i < part; i++) {
      if (header.components().get(i).acTable() == selector) {
        return made[i];
      }
    }
    return LookupTable.withPairs(tables.acTable(selector));
  }
}
