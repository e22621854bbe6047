package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;

/**
 * Decodes a baseline JPEG of one or more scans to coefficients, a bit at a time by the flow charts
 * of ITU-T T.81 F.2.2. Knows sound, bare files only, and shares nothing with the engine.
 */
final class ReferenceDecoder {

  private final byte[] bytes;
  private int at = 2;
  private int bit;
  private final int[][] steps = new int[4][];
  private final int[][][] huffman = new int[8][][];
  private int width;
  private int height;
  private int[][] frame = {};
  private int restartInterval;
  private List<PlainJpeg.Part> parts = new ArrayList<>();

  private ReferenceDecoder(byte[] bytes) {
    this.bytes = bytes;
  }

  static PlainJpeg decode(byte[] bytes) {
    ReferenceDecoder decoder = new ReferenceDecoder(bytes);
    while (decoder.segment()) {
      // Goes on until EOI.
    }
    return new PlainJpeg(decoder.width, decoder.height, decoder.parts);
  }

  private int u8(int index) {
    return bytes[index] & 0xFF;
  }

  private int u16(int index) {
    return u8(index) << 8 | u8(index + 1);
  }

  private boolean segment() {
    if (u8(at) != 0xFF) {
      throw new AssertionError("a marker was expected at byte " + at);
    }
    int marker = u8(at + 1);
    if (marker == 0xD9) {
      return false;
    }
    int data = at + 4;
    at += 2 + u16(at + 2);
    switch (marker) {
      case 0xDB -> quantisation(data);
      case 0xC4 -> huffman(data);
      case 0xC0 -> frame(data);
      case 0xDD -> restartInterval = u16(data);
      case 0xDA -> scan(data);
      default -> throw new AssertionError("marker " + marker);
    }
    return true;
  }

  private void quantisation(int from) {
    for (int data = from; data < at; data += 65) {
      steps[u8(data)] = new int[64];
      for (int k = 0; k < 64; k++) {
        steps[u8(data)][k] = u8(data + 1 + k);
      }
    }
  }

  /** Each code's length, value and symbol (T.81 Annex C). */
  private void huffman(int from) {
    int data = from;
    while (data < at) {
      int symbol = data + 17;
      int code = 0;
      List<int[]> codes = new ArrayList<>();
      for (int length = 1; length <= 16; length++) {
        for (int i = 0; i < u8(data + length); i++) {
          codes.add(new int[] {length, code++, u8(symbol++)});
        }
        code <<= 1;
      }
      huffman[(u8(data) >> 4) * 4 + (u8(data) & 15)] = codes.toArray(new int[0][]);
      data = symbol;
    }
  }

  private void frame(int data) {
    height = u16(data + 1);
    width = u16(data + 3);
    frame = new int[u8(data + 5)][];
    int across = 1;
    int down = 1;
    for (int i = 0; i < frame.length; i++) {
      int part = data + 6 + 3 * i;
      frame[i] = new int[] {u8(part), u8(part + 1) >> 4, u8(part + 1) & 15, u8(part + 2)};
      across = Math.max(across, frame[i][1]);
      down = Math.max(down, frame[i][2]);
    }
    boolean single = frame.length == 1;
    for (int[] part : frame) {
      int wide = PlainJpeg.blocks(width, part[1], across, single);
      int high = PlainJpeg.blocks(height, part[2], down, single);
      parts.add(new PlainJpeg.Part(part[1], part[2], steps[part[3]], new int[high][wide][64]));
    }
  }

  private void scan(int data) {
    int count = u8(data);
    int[][] members = new int[count][];
    for (int i = 0; i < count; i++) {
      int index = 0;
      while (frame[index][0] != u8(data + 1 + 2 * i)) {
        index++;
      }
      int tables = u8(data + 2 + 2 * i);
      members[i] = new int[] {index, tables >> 4, 4 + (tables & 15), 0};
    }
    PlainJpeg picture = new PlainJpeg(width, height, parts);
    int unitWidth = 8 * picture.largest(false);
    int unitHeight = 8 * picture.largest(true);
    int[][][] first = parts.get(members[0][0]).blocks();
    int across = count == 1 ? first[0].length : (width + unitWidth - 1) / unitWidth;
    int down = count == 1 ? first.length : (height + unitHeight - 1) / unitHeight;
    bit = 0;
    for (int unit = 0; unit < across * down; unit++) {
      if (restartInterval > 0 && unit > 0 && unit % restartInterval == 0) {
        align();
        at += 2;
        for (int[] member : members) {
          member[3] = 0;
        }
      }
      for (int[] member : members) {
        PlainJpeg.Part part = parts.get(member[0]);
        int wide = count == 1 ? 1 : part.horizontal();
        int high = count == 1 ? 1 : part.vertical();
        for (int i = 0; i < wide * high; i++) {
          int row = unit / across * high + i / wide;
          int column = unit % across * wide + i % wide;
          boolean shown = row < part.blocks().length && column < part.blocks()[0].length;
          block(member, shown ? part.blocks()[row][column] : new int[64]);
        }
      }
    }
    align();
  }

  private void block(int[] member, int[] block) {
    member[3] += value(symbol(huffman[member[1]]));
    block[0] = member[3];
    for (int k = 1; k < 64; k++) {
      int symbol = symbol(huffman[member[2]]);
      if (symbol == 0) {
        return;
      }
      k += symbol >> 4;
      block[k] = value(symbol & 15);
    }
  }

  private int symbol(int[][] codes) {
    int code = 0;
    for (int length = 1; length <= 16; length++) {
      code = code << 1 | next();
      for (int[] entry : codes) {
        if (entry[0] == length && entry[1] == code) {
          return entry[2];
        }
      }
    }
    throw new AssertionError("no code at byte " + at);
  }

  private int value(int size) {
    int value = 0;
    for (int i = 0; i < size; i++) {
      value = value << 1 | next();
    }
    return size > 0 && value < 1 << (size - 1) ? value - (1 << size) + 1 : value;
  }

  private int next() {
    int value = u8(at) >> (7 - bit) & 1;
    if (++bit == 8) {
      align();
    }
    return value;
  }

  private void align() {
    if (bit > 0) {
      at += u8(at) == 0xFF ? 2 : 1;
      bit = 0;
    }
  }
}
