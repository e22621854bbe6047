package org.vestibule.jpeg;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Codes coefficients as a sequential JPEG, bit by bit as ITU-T T.81 F.1.2 says, with codes of one
 * length for all symbols. Shares nothing with the engine.
 */
final class ReferenceCoder {

  /** AC symbols of a baseline picture (T.81 Table K.5's rows and columns). */
  private static final List<Integer> AC = symbols();

  private final PlainJpeg picture;
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();

  /** Marker of the frame header, 0xC0 or 0xC1. */
  int frameMarker = 0xC0;

  /** MCUs between restart markers. */
  int restartInterval;

  /** Components of each scan. */
  List<int[]> scans;

  /** Component identifiers; the same one may stand more than once. */
  int[] ids;

  /** True if each component has Huffman tables of its own. */
  boolean ownTables;

  /** FF bytes put before each marker (T.81 B.1.1.2). */
  int fill;

  /** What stands between segments though nothing should. */
  byte[] junk = new byte[0];

  private int bits;
  private int count;

  ReferenceCoder(PlainJpeg picture) {
    this.picture = picture;
    int[] all = new int[picture.parts().size()];
    ids = new int[all.length];
    for (int i = 0; i < all.length; i++) {
      all[i] = i;
      ids[i] = i + 1;
    }
    scans = List.of(all);
  }

  private static List<Integer> symbols() {
    List<Integer> symbols = new ArrayList<>(List.of(0, 0xF0));
    for (int run = 0; run < 16; run++) {
      for (int size = 1; size <= 10; size++) {
        symbols.add(run << 4 | size);
      }
    }
    return symbols;
  }

  byte[] code() {
    out.reset();
    marker(0xD8, new byte[0]);
    int count = picture.parts().size();
    byte[] frame = new byte[6 + 3 * count];
    frame[0] = 8;
    frame[1] = (byte) (picture.height() >> 8);
    frame[2] = (byte) picture.height();
    frame[3] = (byte) (picture.width() >> 8);
    frame[4] = (byte) picture.width();
    frame[5] = (byte) count;
    for (int i = 0; i < count; i++) {
      PlainJpeg.Part part = picture.parts().get(i);
      byte[] table = new byte[65];
      table[0] = (byte) i;
      for (int k = 0; k < 64; k++) {
        table[1 + k] = (byte) part.steps()[k];
      }
      marker(0xDB, table);
      frame[6 + 3 * i] = (byte) ids[i];
      frame[7 + 3 * i] = (byte) (part.horizontal() << 4 | part.vertical());
      frame[8 + 3 * i] = (byte) i;
      if (i == 0 || ownTables) {
        huffman(i);
      }
    }
    marker(frameMarker, frame);
    if (restartInterval > 0) {
      marker(0xDD, new byte[] {(byte) (restartInterval >> 8), (byte) restartInterval});
    }
    for (int[] scan : scans) {
      scan(scan);
    }
    marker(0xD9, new byte[0]);
    return out.toByteArray();
  }

  /** Sixteen DC codes of five bits; AC codes of eight, in an order of the table's own. */
  private void huffman(int selector) {
    byte[] dc = new byte[17 + 16];
    dc[0] = (byte) selector;
    dc[5] = 16;
    for (int i = 0; i < 16; i++) {
      dc[17 + i] = (byte) ((i + selector) & 15);
    }
    byte[] ac = new byte[17 + AC.size()];
    ac[0] = (byte) (0x10 | selector);
    ac[8] = (byte) AC.size();
    for (int i = 0; i < AC.size(); i++) {
      ac[17 + i] = (byte) (int) AC.get((i + 5 * selector) % AC.size());
    }
    marker(0xC4, dc);
    marker(0xC4, ac);
  }

  private void scan(int[] members) {
    byte[] head = new byte[4 + 2 * members.length];
    head[0] = (byte) members.length;
    for (int i = 0; i < members.length; i++) {
      head[1 + 2 * i] = (byte) ids[members[i]];
      head[2 + 2 * i] = (byte) (table(members[i]) * 0x11);
    }
    head[2 + 2 * members.length] = 63;
    marker(0xDA, head);
    int[] predictions = new int[picture.parts().size()];
    List<List<int[]>> units = units(members);
    for (int i = 0; i < units.size(); i++) {
      if (restartInterval > 0 && i > 0 && i % restartInterval == 0) {
        pad();
        out.write(0xFF);
        out.write(0xD0 + (i / restartInterval - 1) % 8);
        predictions = new int[predictions.length];
      }
      for (int[] place : units.get(i)) {
        block(place, predictions);
      }
    }
    pad();
  }

  /** The scan's MCUs, each as the component, row and column of its blocks (T.81 A.2). */
  private List<List<int[]>> units(int[] members) {
    List<List<int[]>> units = new ArrayList<>();
    if (members.length == 1) {
      int[][][] blocks = picture.parts().get(members[0]).blocks();
      for (int row = 0; row < blocks.length; row++) {
        for (int column = 0; column < blocks[0].length; column++) {
          units.add(List.of(new int[] {members[0], row, column}));
        }
      }
      return units;
    }
    int across = (picture.width() + 8 * picture.largest(false) - 1) / (8 * picture.largest(false));
    int down = (picture.height() + 8 * picture.largest(true) - 1) / (8 * picture.largest(true));
    for (int y = 0; y < down; y++) {
      for (int x = 0; x < across; x++) {
        List<int[]> unit = new ArrayList<>();
        for (int member : members) {
          PlainJpeg.Part part = picture.parts().get(member);
          for (int v = 0; v < part.vertical(); v++) {
            for (int h = 0; h < part.horizontal(); h++) {
              unit.add(new int[] {member, y * part.vertical() + v, x * part.horizontal() + h});
            }
          }
        }
        units.add(unit);
      }
    }
    return units;
  }

  private int table(int member) {
    return ownTables ? member : 0;
  }

  private void block(int[] place, int[] predictions) {
    int[][][] blocks = picture.parts().get(place[0]).blocks();
    boolean shown = place[1] < blocks.length && place[2] < blocks[0].length;
    // What only fills up an MCU may be anything; here it is loud, so that nothing takes it over.
    int[] block = shown ? blocks[place[1]][place[2]] : loud();
    int selector = table(place[0]);
    int difference = block[0] - predictions[place[0]];
    predictions[place[0]] = block[0];
    put((size(difference) - selector) & 15, 5);
    value(difference);
    int run = 0;
    int last = 63;
    while (last > 0 && block[last] == 0) {
      last--;
    }
    for (int k = 1; k <= last; k++) {
      if (block[k] == 0) {
        run++;
        continue;
      }
      while (run > 15) {
        ac(0xF0, selector);
        run -= 16;
      }
      ac(run << 4 | size(block[k]), selector);
      value(block[k]);
      run = 0;
    }
    if (last < 63) {
      ac(0, selector);
    }
  }

  private static int[] loud() {
    int[] block = new int[64];
    Arrays.fill(block, 77);
    return block;
  }

  private void ac(int symbol, int selector) {
    put(Math.floorMod(AC.indexOf(symbol) - 5 * selector, AC.size()), 8);
  }

  private static int size(int value) {
    int size = 0;
    while (Math.abs(value) >> size != 0) {
      size++;
    }
    return size;
  }

  private void value(int value) {
    int size = size(value);
    put(value < 0 ? value - 1 + (1 << size) : value, size);
  }

  private void put(int value, int length) {
    for (int i = length - 1; i >= 0; i--) {
      bits = bits << 1 | (value >> i & 1);
      if (++count == 8) {
        out.write(bits);
        if ((bits & 0xFF) == 0xFF) {
          out.write(0);
        }
        bits = 0;
        count = 0;
      }
    }
  }

  private void pad() {
    while (count != 0) {
      put(1, 1);
    }
  }

  private void marker(int marker, byte[] data) {
    boolean start = marker == 0xD8;
    for (int i = 0; i < fill && !start; i++) {
      out.write(0xFF);
    }
    out.write(0xFF);
    out.write(marker);
    if (!start && marker != 0xD9) {
      out.write((data.length + 2) >> 8);
      out.write(data.length + 2);
      out.writeBytes(data);
      if (marker != 0xDA) {
        out.writeBytes(junk);
      }
    }
  }
}
