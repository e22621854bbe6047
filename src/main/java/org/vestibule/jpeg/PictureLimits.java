package org.vestibule.jpeg;

/**
 * Says whether a picture is of a kind and size that can be decoded, before anything is allocated.
 */
final class PictureLimits {

  private static final long MOST_SEQUENTIAL_SAMPLES = 200_000_000L;
  private static final long MOST_PROGRESSIVE_SAMPLES = 50_000_000L;
  private static final int WORTH_READING = 100;
  private static final int MOST_COMPONENTS = 4;
  private static final int MOST_SCANS = 400;
  private static final String EXPORT = "export the photo again as an ordinary 8-bit colour JPEG";

  private PictureLimits() {}

  static void check(JpegStructure structure) throws JpegFault {
    JpegFrame frame = structure.frame();
    kind(structure);
    boolean progressive = structure.progressive();
    long most = progressive ? MOST_PROGRESSIVE_SAMPLES : MOST_SEQUENTIAL_SAMPLES;
    if (frame.size().area() > most) {
      throw JpegFault.unsuited(
          "the picture is "
              + frame.size().width()
              + " x "
              + frame.size().height()
              + " samples, more than the "
              + most / 1_000_000
              + " million that are taken for a "
              + frame.process().words()
              + " JPEG",
          "export a smaller copy, or leave it out");
    }
    if (structure.scans() > MOST_SCANS) {
      throw JpegFault.unsuited(
          "the picture comes in "
              + structure.scans()
              + " scans, at most "
              + MOST_SCANS
              + " are taken",
          EXPORT);
    }
    enoughData(structure);
  }

  /**
   * Each block takes at least one bit for its DC code, in a sequential picture another for its end
   * (T.81 F.1.2, G.1.2), so a short file can't claim a huge picture. Of a sequential picture that
   * was cut short the first rows may be sound, so it is read as long as that is worth while.
   */
  private static void enoughData(JpegStructure structure) throws JpegFault {
    long blocks = 0;
    for (JpegComponent component : structure.frame().components()) {
      BlockGrid grid = BlockGrid.of(structure.frame(), component);
      blocks = Math.addExact(blocks, (long) grid.wide() * grid.high());
    }
    long codedBytes = structure.codedBytes();
    long least = structure.progressive() ? blocks / 8 : blocks / 4;
    if (codedBytes < (structure.progressive() ? least : least / WORTH_READING)) {
      throw JpegFault.damaged(
          "the picture's data ends too early: "
              + codedBytes
              + " bytes are there, its "
              + blocks
              + " blocks take at least "
              + least);
    }
  }

  private static void kind(JpegStructure structure) throws JpegFault {
    JpegFrame frame = structure.frame();
    if (!frame.process().readable()) {
      throw JpegFault.unsuited(
          "the picture is coded as "
              + frame.process().words()
              + " JPEG; baseline, extended sequential and progressive Huffman coding are read",
          EXPORT);
    }
    if (frame.precisionBits() != 8) {
      throw JpegFault.unsuited(
          "the picture has " + frame.precisionBits() + " bits per sample, 8 are read", EXPORT);
    }
    int components = frame.components().size();
    if (components > MOST_COMPONENTS) {
      throw JpegFault.unsuited(
          "the picture has " + components + " components, at most " + MOST_COMPONENTS + " are read",
          EXPORT);
    }
  }
}
