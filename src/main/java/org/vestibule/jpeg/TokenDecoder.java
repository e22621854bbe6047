package org.vestibule.jpeg;

import org.jspecify.annotations.Nullable;

/** Decodes sequential pictures to tokens, once and fast; those whose scans are sound and tidy. */
final class TokenDecoder extends PictureWalk {

  private final TokenPicture picture;
  private final @Nullable Onlooker onlooker;
  private @Nullable PlainScan plainScan;

  /** Is told of a component before its blocks are read. */
  interface Onlooker {
    void component(int index, int[] quantisation);
  }

  private TokenDecoder(byte[] bytes, TokenPicture picture, @Nullable Onlooker onlooker) {
    super(bytes, picture.structure);
    this.picture = picture;
    this.onlooker = onlooker;
  }

  /** Decodes a picture that forgets its tokens; each block is shown before it is forgotten. */
  static void look(byte[] bytes, TokenPicture picture, Onlooker onlooker) throws JpegFault {
    new TokenDecoder(bytes, picture, onlooker).decode();
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
    new TokenDecoder(bytes, picture, null).decode();
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
      if (onlooker != null) {
        onlooker.component(part.index(), quantisation(part.index()));
      }
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
    HuffmanTable table = tables.acTable(selector);
    return onlooker == null ? LookupTable.withPairs(table) : LookupTable.withLooks(table);
  }
}
