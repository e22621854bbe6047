package org.vestibule.samples;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A small ICC display profile of version 2 (ICC.1:2001-04, layout from memory): sRGB's primaries
 * adapted to D50 and a plain gamma of 2.2. Written by hand, so that nobody's licence applies.
 */
public final class SampleProfile {

  /** What a reader shows as the profile's name. */
  public static final String DESCRIPTION = "Vestibule sample display";

  private SampleProfile() {}

  /** The profile's bytes. */
  public static byte[] bytes() {
    Map<String, byte[]> tags = new LinkedHashMap<>();
    tags.put("desc", description());
    tags.put("cprt", text("No copyright, use freely"));
    tags.put("wtpt", xyz(0.9642, 1.0, 0.8249));
    tags.put("rXYZ", xyz(0.4361, 0.2225, 0.0139));
    tags.put("gXYZ", xyz(0.3851, 0.7169, 0.0971));
    tags.put("bXYZ", xyz(0.1431, 0.0606, 0.7141));
    tags.put("rTRC", gamma());
    tags.put("gTRC", gamma());
    tags.put("bTRC", gamma());
    int table = 128 + 4 + 12 * tags.size();
    int size = table;
    for (byte[] tag : tags.values()) {
      size += tag.length;
    }
    ByteBuffer out = ByteBuffer.allocate(size);
    header(out, size);
    out.position(128);
    out.putInt(tags.size());
    int offset = table;
    for (var tag : tags.entrySet()) {
      out.put(ascii(tag.getKey())).putInt(offset).putInt(tag.getValue().length);
      offset += tag.getValue().length;
    }
    tags.values().forEach(out::put);
    return out.array();
  }

  private static void header(ByteBuffer out, int size) {
    out.putInt(size).putInt(0).putInt(0x02100000);
    out.put(ascii("mntrRGB XYZ "));
    for (int part : new int[] {2026, 1, 5, 8, 0, 0}) {
      out.putShort((short) part);
    }
    out.put(ascii("acsp"));
    out.position(68);
    out.putInt(fixed(0.9642)).putInt(fixed(1.0)).putInt(fixed(0.8249));
  }

  private static byte[] description() {
    byte[] name = ascii(DESCRIPTION + "\0");
    ByteBuffer out = ByteBuffer.allocate(padded(12 + name.length + 8 + 3 + 67));
    out.put(ascii("desc")).putInt(0).putInt(name.length).put(name);
    return out.array();
  }

  private static byte[] text(String words) {
    byte[] bytes = ascii(words + "\0");
    return ByteBuffer.allocate(padded(8 + bytes.length))
        .put(ascii("text"))
        .putInt(0)
        .put(bytes)
        .array();
  }

  private static byte[] xyz(double x, double y, double z) {
    return ByteBuffer.allocate(20)
        .put(ascii("XYZ "))
        .putInt(0)
        .putInt(fixed(x))
        .putInt(fixed(y))
        .putInt(fixed(z))
        .array();
  }

  private static byte[] gamma() {
    return ByteBuffer.allocate(16)
        .put(ascii("curv"))
        .putInt(0)
        .putInt(1)
        .putShort((short) 0x0233)
        .array();
  }

  private static int padded(int length) {
    return (length + 3) / 4 * 4;
  }

  private static int fixed(double value) {
    return (int) Math.round(value * 65536);
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
