package org.vestibule.jpeg;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Reads a sequential picture's scans once, block by block, in the proof's way ({@link
 * ValueReader}), and hands each block on. Takes sound and tidy pictures only; of whatever else
 * there is, the plain decoder has the last word.
 */
final class ValueScan extends PictureWalk {

  /** Makes ready for a component, once its quantisation is known. */
  interface Maker {
    PlaneReading component(int index, int[] quantisation);
  }

  private final Maker maker;
  private boolean beyondBaseline;
  private @Nullable PlainScan plainScan;

  private ValueScan(byte[] bytes, JpegStructure structure, Maker maker) {
    super(bytes, structure);
    this.maker = maker;
  }

  /** Reads all codes; whatever is damaged, odd or unsuited is thrown as a fault. */
  static ValueScan read(byte[] bytes, JpegStructure structure, Maker maker) throws JpegFault {
    if (structure.progressive()) {
      throw new IllegalArgumentException("a progressive picture has no blocks until its last scan");
    }
    ValueScan scan = new ValueScan(bytes, structure, maker);
    scan.segments();
    scan.requireWhole();
    return scan;
  }

  /** The scan's bytes as they can be kept, or null. */
  @Nullable PlainScan plainScan() {
    return beyondBaseline ? null : plainScan;
  }

  @Override
  void scan(ScanHeader header, JpegSegment segment) throws JpegFault {
    int count = header.components().size();
    BitReader in = new BitReader(bytes, segment.dataEnd(), segment.codedEnd());
    ValueReader reader = new ValueReader(in, count);
    Part[] parts = new Part[count];
    for (int i = 0; i < count; i++) {
      ScanHeader.Part part = header.components().get(i);
      PlaneReading plane = maker.component(part.index(), quantisation(part.index()));
      parts[i] =
          new Part(
              i,
              header.interleaved() ? frame.components().get(part.index()).horizontal() : 1,
              header.interleaved() ? frame.components().get(part.index()).vertical() : 1,
              ValueTable.dc(tables.dcTable(part.dcTable())),
              ValueTable.ac(tables.acTable(part.acTable()), plane.weights() != null),
              plane);
    }
    BlockGrid first = parts[0].plane.grid();
    units(
        parts,
        header.interleaved() ? BlockGrid.unitsWide(frame) : first.wide(),
        header.interleaved() ? BlockGrid.unitsHigh(frame) : first.high(),
        in,
        reader);
    if (!in.atEnd()) {
      throw JpegFault.damaged("stray bytes in the data of the scan of " + segment.place());
    }
    beyondBaseline |= reader.beyondBaseline;
    plainScan = plainScan(header, segment);
  }

  /** One component of a scan. */
  private record Part(
      int index, int across, int down, ValueTable dc, ValueTable ac, PlaneReading plane) {

    /** Reads the component's blocks of one MCU. */
    void unit(int row, int column, ValueReader reader) throws JpegFault {
      int @Nullable [] fine = plane.fine();
      BlockWeights weights = plane.weights();
      for (int y = row * down; y < (row + 1) * down; y++) {
        for (int x = column * across; x < (column + 1) * across; x++) {
          reader.block(index, dc, ac, fine, weights);
          plane.block(y, x, reader);
        }
      }
    }
  }

  private void units(Part[] parts, int wide, int high, BitReader in, ValueReader reader)
      throws JpegFault {
    int interval = tables.restartInterval();
    int left = interval;
    int marker = 0;
    for (int row = 0; row < high; row++) {
      for (int column = 0; column < wide; column++) {
        if (interval > 0 && left-- == 0) {
          if (!in.atRestart() || in.restart() != marker) {
            throw JpegFault.damaged("no restart marker " + marker + " near " + in.position());
          }
          marker = (marker + 1) & 7;
          left = interval - 1;
          reader.reset();
        }
        for (Part part : parts) {
          part.unit(row, column, reader);
        }
        if (in.overrun()) {
          throw JpegFault.damaged("the picture's data ends too early, near " + in.position());
        }
      }
    }
  }

  /** Each component's quantisation in zigzag order. */
  List<int[]> quantisation() {
    return List.of(quantisation);
  }
}
