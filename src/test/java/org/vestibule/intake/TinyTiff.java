package org.vestibule.intake;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;

/**
 * Writes Exif data for tests: a first directory, an Exif directory and, if asked, a GPS directory
 * (TIFF 6.0 section 2, from memory).
 */
final class TinyTiff {

  private static final int EXIF_POINTER = 0x8769;
  private static final int GPS_POINTER = 0x8825;

  private record Field(int type, int count, byte[] bytes) {}

  private final ByteOrder order;
  private final TreeMap<Integer, Field> first = new TreeMap<>();
  private final TreeMap<Integer, Field> exif = new TreeMap<>();
  private final TreeMap<Integer, Field> gps = new TreeMap<>();

  TinyTiff(ByteOrder order) {
    this.order = order;
  }

  TinyTiff text(int tag, String value) {
    byte[] bytes = (value + "\0").getBytes(StandardCharsets.UTF_8);
    return put(tag, new Field(2, bytes.length, bytes));
  }

  TinyTiff shorts(int tag, int... values) {
    ByteBuffer out = ByteBuffer.allocate(2 * values.length).order(order);
    for (int value : values) {
      out.putShort((short) value);
    }
    return put(tag, new Field(3, values.length, out.array()));
  }

  TinyTiff longs(int tag, long value) {
    return put(
        tag, new Field(4, 1, ByteBuffer.allocate(4).order(order).putInt((int) value).array()));
  }

  TinyTiff rational(int tag, long numerator, long denominator) {
    return ratio(tag, 5, numerator, denominator);
  }

  TinyTiff signedRational(int tag, int numerator, int denominator) {
    return ratio(tag, 10, numerator, denominator);
  }

  TinyTiff undefined(int tag, byte[] bytes) {
    return put(tag, new Field(7, bytes.length, bytes));
  }

  TinyTiff latitude(int degrees) {
    gps.put(1, new Field(2, 2, new byte[] {'N', 0}));
    ByteBuffer out = ByteBuffer.allocate(24).order(order);
    out.putInt(degrees).putInt(1).putInt(0).putInt(1).putInt(0).putInt(1);
    gps.put(2, new Field(5, 3, out.array()));
    return this;
  }

  private TinyTiff ratio(int tag, int type, long numerator, long denominator) {
    ByteBuffer out = ByteBuffer.allocate(8).order(order);
    return put(
        tag, new Field(type, 1, out.putInt((int) numerator).putInt((int) denominator).array()));
  }

  /** Exposure and later tags, but for editors' private ones, belong to the Exif directory. */
  private TinyTiff put(int tag, Field field) {
    boolean main = tag < 0x829A || (tag >= 0x9C9B && tag <= 0x9C9F);
    (main ? first : exif).put(tag, field);
    return this;
  }

  byte[] bytes() {
    int exifAt = 8 + size(first, gps.isEmpty() ? 1 : 2);
    int gpsAt = exifAt + size(exif, 0);
    first.put(EXIF_POINTER, pointer(exifAt));
    if (!gps.isEmpty()) {
      first.put(GPS_POINTER, pointer(gpsAt));
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(
        (order == ByteOrder.BIG_ENDIAN ? "MM" : "II").getBytes(StandardCharsets.US_ASCII));
    out.writeBytes(ByteBuffer.allocate(6).order(order).putShort((short) 42).putInt(8).array());
    directory(out, first, 8);
    directory(out, exif, exifAt);
    if (!gps.isEmpty()) {
      directory(out, gps, gpsAt);
    }
    return out.toByteArray();
  }

  private Field pointer(int offset) {
    return new Field(4, 1, ByteBuffer.allocate(4).order(order).putInt(offset).array());
  }

  private static int size(Map<Integer, Field> fields, int pointers) {
    int size = 2 + 12 * (fields.size() + pointers) + 4;
    for (Field field : fields.values()) {
      size += field.bytes().length > 4 ? (field.bytes().length + 1) & ~1 : 0;
    }
    return size;
  }

  private void directory(ByteArrayOutputStream out, Map<Integer, Field> fields, int at) {
    int far = at + 2 + 12 * fields.size() + 4;
    ByteBuffer head = ByteBuffer.allocate(2 + 12 * fields.size() + 4).order(order);
    ByteArrayOutputStream tail = new ByteArrayOutputStream();
    head.putShort((short) fields.size());
    for (Map.Entry<Integer, Field> entry : fields.entrySet()) {
      Field field = entry.getValue();
      head.putShort((short) (int) entry.getKey()).putShort((short) field.type());
      head.putInt(field.count());
      if (field.bytes().length > 4) {
        head.putInt(far + tail.size());
        tail.writeBytes(field.bytes());
        if (field.bytes().length % 2 == 1) {
          tail.write(0);
        }
      } else {
        head.put(field.bytes()).put(new byte[4 - field.bytes().length]);
      }
    }
    head.putInt(0);
    out.writeBytes(head.array());
    out.writeBytes(tail.toByteArray());
  }
}
