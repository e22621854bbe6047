package org.vestibule.jpeg;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * All that a decoder of a picture in one sequential scan goes by: the tables in force, the restart
 * interval, the sampling and the coded bytes (ITU-T T.81 E.2.3, F.2). Where two pictures of one
 * size agree in it, they hold the same coefficients, and nothing needs to be decoded to say so.
 *
 * <p>The proof reads it apart from the engine, straight from the segments' bytes.
 */
final class CodedScan {

  private static final int TABLES = 4;
  private static final int COEFFICIENTS = 64;
  private static final int LONGEST_CODE = 16;

  private final byte[] file;
  private final JpegFrame frame;
  private final int[][] quantisation = new int[TABLES][];
  private final byte[][] huffman = new byte[2 * TABLES][];
  private int restartInterval;
  private int from;
  private int to;
  private int[] selected = new int[0];

  private CodedScan(byte[] file, JpegFrame frame) {
    this.file = file;
    this.frame = frame;
  }

  /**
   * Reads it; null for a picture that is not in one sequential scan of all its components, or whose
   * segments are odd in any way.
   */
  static @Nullable CodedScan of(byte[] file, JpegStructure structure) {
    if (structure.progressive() || structure.scans() != 1) {
      return null;
    }
    CodedScan scan = new CodedScan(file, structure.frame());
    for (JpegSegment segment : structure.segments()) {
      if (!scan.take(segment)) {
        return null;
      }
      if (segment.marker() == Markers.SOS) {
        return scan;
      }
    }
    return null;
  }

  /** True if a decoder can't tell the two apart. */
  boolean isSameAs(CodedScan other) {
    List<JpegComponent> mine = frame.components();
    List<JpegComponent> others = other.frame.components();
    if (!frame.size().equals(other.frame.size())
        || mine.size() != others.size()
        || restartInterval != other.restartInterval) {
      return false;
    }
    for (int i = 0; i < mine.size(); i++) {
      boolean sampledAlike =
          mine.size() == 1
              || (mine.get(i).horizontal() == others.get(i).horizontal()
                  && mine.get(i).vertical() == others.get(i).vertical());
      if (!sampledAlike || !hasTablesOf(i, other)) {
        return false;
      }
    }
    return Arrays.equals(file, from, to, other.file, other.from, other.to);
  }

  private boolean hasTablesOf(int component, CodedScan other) {
    int[] steps = quantisation[frame.components().get(component).quantTable()];
    byte[] dc = huffman[selected[component] >> 4];
    byte[] ac = huffman[TABLES + (selected[component] & 15)];
    return steps != null
        && dc != null
        && ac != null
        && Arrays.equals(
            steps, other.quantisation[other.frame.components().get(component).quantTable()])
        && Arrays.equals(dc, other.huffman[other.selected[component] >> 4])
        && Arrays.equals(ac, other.huffman[TABLES + (other.selected[component] & 15)]);
  }

  /** Takes a segment in; false if it is odd. */
  private boolean take(JpegSegment segment) {
    return switch (segment.marker()) {
      case Markers.DQT -> quantisation(segment);
      case Markers.DHT -> huffman(segment);
      case Markers.DRI -> restart(segment);
      case Markers.SOS -> scan(segment);
      default -> true;
    };
  }

  private boolean quantisation(JpegSegment segment) {
    int at = segment.dataStart();
    while (at < segment.dataEnd()) {
      int table = Bytes.u8(file, at) & 15;
      int width = (Bytes.u8(file, at) >> 4) + 1;
      at++;
      if (width > 2 || table >= TABLES || at + width * COEFFICIENTS > segment.dataEnd()) {
        return false;
      }
      int[] steps = new int[COEFFICIENTS];
      for (int i = 0; i < COEFFICIENTS; i++) {
        steps[i] = width == 1 ? Bytes.u8(file, at + i) : Bytes.u16(file, at + 2 * i);
      }
      quantisation[table] = steps;
      at += width * COEFFICIENTS;
    }
    return true;
  }

  /** Keeps a table as its segment has it: sixteen counts, then the symbols. */
  private boolean huffman(JpegSegment segment) {
    int at = segment.dataStart();
    while (at < segment.dataEnd()) {
      int kind = Bytes.u8(file, at) >> 4;
      int table = Bytes.u8(file, at) & 15;
      at++;
      if (kind > 1 || table >= TABLES || at + LONGEST_CODE > segment.dataEnd()) {
        return false;
      }
      int end = at + LONGEST_CODE;
      for (int length = 0; length < LONGEST_CODE; length++) {
        end += Bytes.u8(file, at + length);
      }
      if (end > segment.dataEnd()) {
        return false;
      }
      huffman[kind * TABLES + table] = Arrays.copyOfRange(file, at, end);
      at = end;
    }
    return true;
  }

  private boolean restart(JpegSegment segment) {
    if (segment.dataLength() != 2) {
      return false;
    }
    restartInterval = Bytes.u16(file, segment.dataStart());
    return true;
  }

  /** Takes the scan's header: each component in the frame's order, all coefficients at once. */
  private boolean scan(JpegSegment segment) {
    int components = frame.components().size();
    int at = segment.dataStart();
    if (segment.dataLength() != 4 + 2 * components || Bytes.u8(file, at) != components) {
      return false;
    }
    selected = new int[components];
    for (int i = 0; i < components; i++) {
      int tables = Bytes.u8(file, at + 2 + 2 * i);
      if (Bytes.u8(file, at + 1 + 2 * i) != frame.components().get(i).id()
          || tables >> 4 >= TABLES
          || (tables & 15) >= TABLES) {
        return false;
      }
      selected[i] = tables;
    }
    int spectral = at + 1 + 2 * components;
    from = segment.dataEnd();
    to = segment.codedEnd();
    return Bytes.u16(file, spectral) == COEFFICIENTS - 1 && Bytes.u8(file, spectral + 2) == 0;
  }
}
