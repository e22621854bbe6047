package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Decodes progressive pictures to tokens, fast; sound pictures only, as {@link TokenDecoder}. */
final class ProgressiveDecoder extends PictureWalk {

  /** The highest bit of {@link ProgressivePlane#LARGEST}. */
  private static final int HIGHEST_BIT = 9;

  private final List<ProgressivePlane> planes = new ArrayList<>();
  private final byte[] quarters;

  private ProgressiveDecoder(byte[] bytes, JpegStructure structure) {
    super(bytes, structure);
    int places = 0;
    List<BlockGrid> grids = new ArrayList<>();
    for (JpegComponent component : frame.components()) {
      BlockGrid grid = BlockGrid.of(frame, component);
      grids.add(grid);
      places = Math.addExact(places, Math.multiplyExact(64, ProgressivePlane.blocks(grid)));
    }
    this.quarters = SpareValues.take(places);
    int offset = 0;
    for (int i = 0; i < grids.size(); i++) {
      planes.add(new ProgressivePlane(frame.components().get(i), grids.get(i), quarters, offset));
      offset += 64 * ProgressivePlane.blocks(grids.get(i));
    }
  }

  /** Decodes into a picture that is empty yet. */
  static void decode(byte[] bytes, TokenPicture picture) throws JpegFault {
    ProgressiveDecoder decoder = read(bytes, picture);
    for (int i = 0; i < picture.planes.size(); i++) {
      tokens(decoder.planes.get(i), picture.planes.get(i), picture);
    }
    SpareValues.give(decoder.quarters);
  }

  /** Decodes without making tokens: what is written once is written sooner from the scans. */
  static void decodeUntold(byte[] bytes, TokenPicture picture) throws JpegFault {
    ProgressiveDecoder decoder = read(bytes, picture);
    for (int i = 0; i < picture.planes.size(); i++) {
      TokenPlane to = picture.planes.get(i);
      System.arraycopy(decoder.planes.get(i).dc, 0, to.dc, 0, to.dc.length);
      Arrays.setAll(to.place, index -> index);
    }
    picture.untold = new ProgressivePicture(decoder.planes, decoder.quarters);
  }

  private static ProgressiveDecoder read(byte[] bytes, TokenPicture picture) throws JpegFault {
    ProgressiveDecoder decoder = new ProgressiveDecoder(bytes, picture.structure);
    decoder.segments();
    decoder.requireWhole();
    for (int i = 0; i < picture.planes.size(); i++) {
      picture.planes.get(i).quantisation = decoder.quantisation(i);
    }
    return decoder;
  }

  /** Writes a plane as tokens and sets its quarters back to zero. */
  private static void tokens(ProgressivePlane from, TokenPlane to, TokenPicture picture)
      throws JpegFault {
    int[] places = ScatteredBlock.placesFor(picture.transposed);
    ScatteredBlock block = new ScatteredBlock();
    int wide = from.grid.wide();
    for (int index = 0; index < from.filled.length; index++) {
      if (!to.keeps(index / wide, index % wide)) {
        from.forget(index);
        continue;
      }
      to.dc[index] = from.dc[index];
      to.place[index] = picture.tokens.begin();
      if (picture.transposed) {
        from.write(index, places, block);
        block.write(picture.tokens, to.acCounts);
      } else {
        from.write(index, picture.tokens, to.acCounts);
      }
    }
  }

  @Override
  void scan(ScanHeader header, JpegSegment segment) throws JpegFault {
    if (header.spectralStart() > 0 && header.low() > HIGHEST_BIT) {
      throw JpegFault.damaged(segment.place() + " carries values that no baseline JPEG can");
    }
    List<LookupTable> needed = new ArrayList<>();
    for (ScanHeader.Part part : header.components()) {
      if (header.spectralStart() > 0) {
        needed.add(LookupTable.of(tables.acTable(part.acTable())));
      } else if (header.high() == 0) {
        needed.add(LookupTable.of(tables.dcTable(part.dcTable())));
      }
    }
    ScanBits in = new ScanBits(bytes, segment.dataEnd(), segment.codedEnd());
    ProgressiveTokens blocks =
        new ProgressiveTokens(in, header, needed.toArray(new LookupTable[0]));
    Restarts restarts = new Restarts(tables.restartInterval(), in);
    if (header.interleaved()) {
      interleaved(header, blocks, restarts);
    } else {
      single(header, blocks, restarts);
    }
    in.requireEnd();
  }

  private void single(ScanHeader header, ProgressiveTokens blocks, Restarts restarts)
      throws JpegFault {
    ProgressivePlane plane = planes.get(header.components().get(0).index());
    boolean dc = header.spectralStart() == 0;
    plane.packed |= blocks.packs();
    int count = plane.filled.length;
    for (int index = 0; index < count; index++) {
      if (!restarts.any()) {
        index += blocks.pass(count - index);
        if (index == count) {
          return;
        }
      }
      if (restarts.due()) {
        blocks.reset();
      }
      if (dc) {
        blocks.dc(plane, index, 0);
      } else {
        blocks.ac(plane, index);
      }
    }
  }

  /** Only DC scans interleave components. */
  private void interleaved(ScanHeader header, ProgressiveTokens blocks, Restarts restarts)
      throws JpegFault {
    int wide = BlockGrid.unitsWide(frame);
    int high = BlockGrid.unitsHigh(frame);
    for (int row = 0; row < high; row++) {
      for (int column = 0; column < wide; column++) {
        if (restarts.due()) {
          blocks.reset();
        }
        for (int part = 0; part < header.components().size(); part++) {
          unit(planes.get(header.components().get(part).index()), part, row, column, blocks);
        }
      }
    }
  }

  private static void unit(
      ProgressivePlane plane, int part, int unitRow, int unitColumn, ProgressiveTokens blocks)
      throws JpegFault {
    BlockGrid grid = plane.grid;
    int across = plane.component.horizontal();
    int down = plane.component.vertical();
    for (int row = unitRow * down; row < (unitRow + 1) * down; row++) {
      for (int column = unitColumn * across; column < (unitColumn + 1) * across; column++) {
        boolean shown = row < grid.high() && column < grid.wide();
        blocks.dc(plane, shown ? row * grid.wide() + column : -1, part);
      }
    }
  }
}
