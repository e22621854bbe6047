package org.vestibule.intake;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.Locale;

/** Writes the frame of a HEIF file with an Exif item and no picture (ISO/IEC 23008-12, memory). */
public final class TinyHeif {

  private TinyHeif() {}

  /** One that says when it was taken, and by which model. */
  public static byte[] taken(LocalDateTime at, String model) {
    return with(
        new TinyTiff(ByteOrder.BIG_ENDIAN)
            .text(Tag.MODEL, model)
            .text(
                Tag.DATE_TIME_ORIGINAL,
                DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss", Locale.ROOT).format(at))
            .bytes());
  }

  static byte[] with(byte[] tiff) {
    byte[] item = join(new byte[] {0, 0, 0, 6}, ascii("Exif\0\0"), tiff);
    byte[] type = box("ftyp", ascii("heic"), new byte[4], ascii("mif1heic"));
    int metaLength = meta(0, item.length).length;
    return join(type, meta(type.length + metaLength + 8, item.length), box("mdat", item));
  }

  private static byte[] meta(int offset, int length) {
    byte[] handler = box("hdlr", new byte[8], ascii("pict"), new byte[13]);
    byte[] entry = box("infe", new byte[] {2, 0, 0, 0, 0, 7, 0, 0}, ascii("Exif\0"));
    byte[] info = box("iinf", new byte[] {0, 0, 0, 0, 0, 1}, entry);
    byte[] place =
        ByteBuffer.allocate(16)
            .put((byte) 0x44)
            .put((byte) 0)
            .putShort((short) 1)
            .putShort((short) 7)
            .putShort((short) 0)
            .array();
    ByteBuffer extents = ByteBuffer.allocate(10).putShort((short) 1).putInt(offset).putInt(length);
    byte[] places = box("iloc", new byte[4], Arrays.copyOf(place, 8), extents.array());
    return box("meta", new byte[4], handler, info, places);
  }

  private static byte[] box(String type, byte[]... parts) {
    byte[] content = join(parts);
    return join(
        ByteBuffer.allocate(8).putInt(8 + content.length).put(ascii(type)).array(), content);
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  private static byte[] join(byte[]... parts) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      out.writeBytes(part);
    }
    return out.toByteArray();
  }
}
