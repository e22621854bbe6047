package org.vestibule.samples;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * One image file directory with its values, big endian (TIFF 6.0 section 2, from memory; Exif's tag
 * numbers from CIPA DC-008, from memory).
 */
final class TiffBlock {

  private static final int ASCII = 2;
  private static final int SHORT = 3;
  private static final int LONG = 4;
  private static final int RATIONAL = 5;
  private static final int UNDEFINED = 7;

  /** A field: its type, how many values, and either its bytes or the directory it points to. */
  private record Field(int type, int count, byte[] bytes, @Nullable TiffBlock child, boolean far) {}

  private final TreeMap<Integer, Field> fields = new TreeMap<>();

  boolean isEmpty() {
    return fields.isEmpty();
  }

  TiffBlock ascii(int tag, String text) {
    byte[] bytes = (text + "\0").getBytes(StandardCharsets.US_ASCII);
    return put(tag, ASCII, bytes.length, bytes);
  }

  TiffBlock shorts(int tag, int... values) {
    ByteBuffer out = ByteBuffer.allocate(values.length * 2);
    for (int value : values) {
      out.putShort((short) value);
    }
    return put(tag, SHORT, values.length, out.array());
  }

  TiffBlock longs(int tag, int... values) {
    ByteBuffer out = ByteBuffer.allocate(values.length * 4);
    for (int value : values) {
      out.putInt(value);
    }
    return put(tag, LONG, values.length, out.array());
  }

  /** Numerators and denominators in turn. */
  TiffBlock rationals(int tag, int... pairs) {
    ByteBuffer out = ByteBuffer.allocate(pairs.length * 4);
    for (int part : pairs) {
      out.putInt(part);
    }
    return put(tag, RATIONAL, pairs.length / 2, out.array());
  }

  TiffBlock undefined(int tag, byte[] bytes) {
    return put(tag, UNDEFINED, bytes.length, bytes.clone());
  }

  /** A single byte, as GPS altitude reference has it. */
  TiffBlock single(int tag, int value) {
    return put(tag, 1, 1, new byte[] {(byte) value});
  }

  /** A pointer to another directory. */
  TiffBlock child(int tag, TiffBlock child) {
    fields.put(tag, new Field(LONG, 1, new byte[0], child, true));
    return this;
  }

  /** A pointer to bytes, and how many there are. */
  TiffBlock attachment(int offsetTag, int lengthTag, byte[] bytes) {
    fields.put(offsetTag, new Field(LONG, 1, bytes.clone(), null, true));
    return longs(lengthTag, bytes.length);
  }

  private TiffBlock put(int tag, int type, int count, byte[] bytes) {
    fields.put(tag, new Field(type, count, bytes, null, bytes.length > 4));
    return this;
  }

  /** A whole TIFF stream: header, this directory, and the next one if there is one. */
  byte[] file(@Nullable TiffBlock next) {
    int second = 8 + size();
    ByteBuffer out = ByteBuffer.allocate(second + (next == null ? 0 : next.size()));
    out.put((byte) 'M').put((byte) 'M').putShort((short) 42).putInt(8);
    write(out, next == null ? 0 : second);
    if (next != null) {
      out.position(second);
      next.write(out, 0);
    }
    return out.array();
  }

  private int size() {
    int size = 2 + 12 * fields.size() + 4;
    for (Field field : fields.values()) {
      size += farSize(field);
    }
    return size;
  }

  private static int farSize(Field field) {
    if (!field.far()) {
      return 0;
    }
    int size = field.child() == null ? field.bytes().length : field.child().size();
    return size + (size & 1);
  }

  private void write(ByteBuffer out, int nextOffset) {
    int start = out.position();
    int far = start + 2 + 12 * fields.size() + 4;
    out.putShort((short) fields.size());
    for (var entry : fields.entrySet()) {
      Field field = entry.getValue();
      out.putShort((short) (int) entry.getKey()).putShort((short) field.type());
      out.putInt(field.count());
      if (field.far()) {
        out.putInt(far);
        writeFar(out, field, far);
        far += farSize(field);
      } else {
        out.put(field.bytes()).put(new byte[4 - field.bytes().length]);
      }
    }
    out.putInt(nextOffset);
  }

  private static void writeFar(ByteBuffer out, Field field, int offset) {
    int back = out.position();
    out.position(offset);
    if (field.child() == null) {
      out.put(field.bytes());
    } else {
      field.child().write(out, 0);
    }
    out.position(back);
  }
}
