package org.vestibule.jpeg;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Writes the marker segments of a bare baseline JPEG (ITU-T T.81 B.2). */
final class BaselineWriter {

  private static final int LARGEST_STEP = 255;

  private final ByteArrayOutputStream out;

  BaselineWriter(int sizeHint) {
    out = new ByteArrayOutputStream(sizeHint);
    marker(Markers.SOI);
  }

  /**
   * Quantisation tables and frame header.
   *
   * @param tables each component's table in zigzag order
   */
  void frame(JpegFrame frame, List<int[]> tables) throws JpegFault {
    List<int[]> distinct = new ArrayList<>();
    List<Integer> selectors = new ArrayList<>();
    for (int[] table : tables) {
      int found = 0;
      while (found < distinct.size() && !Arrays.equals(distinct.get(found), table)) {
        found++;
      }
      if (found == distinct.size()) {
        distinct.add(table);
        quantisation(found, table);
      }
      selectors.add(found);
    }
    marker(Markers.SOF0);
    u16(8 + 3 * tables.size());
    out.write(8);
    u16(frame.size().height());
    u16(frame.size().width());
    out.write(tables.size());
    for (int i = 0; i < tables.size(); i++) {
      JpegComponent component = frame.components().get(i);
      out.write(i + 1);
      out.write(component.horizontal() << 4 | component.vertical());
      out.write(selectors.get(i));
    }
  }

  private void quantisation(int selector, int[] table) throws JpegFault {
    marker(Markers.DQT);
    u16(67);
    out.write(selector);
    for (int step : table) {
      if (step > LARGEST_STEP) {
        throw JpegFault.unsuited(
            "the picture uses a quantisation step of "
                + step
                + ", a baseline JPEG carries at most "
                + LARGEST_STEP,
            "export the photo again in better quality");
      }
      out.write(step);
    }
  }

  /**
   * A Huffman table.
   *
   * @param kind 0 for DC, 1 for AC
   */
  void huffman(int kind, int selector, HuffmanTable table) {
    marker(Markers.DHT);
    u16(19 + table.symbolCount());
    out.write(kind << 4 | selector);
    for (int length = 1; length <= 16; length++) {
      out.write(table.count(length));
    }
    for (int i = 0; i < table.symbolCount(); i++) {
      out.write(table.symbol(i));
    }
  }

  void restartInterval(int units) {
    marker(Markers.DRI);
    u16(4);
    u16(units);
  }

  /**
   * A scan header.
   *
   * @param components places of the components in the frame header
   * @param tables DC and AC table selectors of each, {@code dc << 4 | ac}
   */
  void scan(int[] components, int[] tables) {
    marker(Markers.SOS);
    u16(6 + 2 * components.length);
    out.write(components.length);
    for (int i = 0; i < components.length; i++) {
      out.write(components[i] + 1);
      out.write(tables[i]);
    }
    out.write(0);
    out.write(63);
    out.write(0);
  }

  void coded(byte[] bytes, int from, int to) {
    out.write(bytes, from, to - from);
  }

  /** Ends with coded bytes that are copied once, into an array of the right size. */
  byte[] finishWith(byte[] coded, int from, int to) {
    byte[] header = out.toByteArray();
    int length = Math.subtractExact(to, from);
    byte[] all = Arrays.copyOf(header, Math.addExact(header.length, length) + 2);
    System.arraycopy(coded, from, all, header.length, length);
    all[all.length - 2] = (byte) 0xFF;
    all[all.length - 1] = (byte) Markers.EOI;
    return all;
  }

  private void marker(int marker) {
    out.write(0xFF);
    out.write(marker);
  }

  private void u16(int value) {
    out.write(value >> 8);
    out.write(value & 0xFF);
  }
}
