package org.vestibule.jpeg;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import javax.imageio.ImageIO;

/** Puts JPEG files together byte by byte for tests. */
final class Assembled {

  private Assembled() {}

  /** A small colour picture with a JFIF header, by the runtime's own encoder. */
  static byte[] plain(int width, int height) {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        image.setRGB(x, y, (x * 7 & 255) << 16 | (y * 5 & 255) << 8 | (x * y & 255));
      }
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      ImageIO.write(image, "jpeg", out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  static byte[] latin(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  /** The bytes as one array. */
  static byte[] join(byte[]... parts) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      out.writeBytes(part);
    }
    return out.toByteArray();
  }

  static byte[] bytes(int... values) {
    byte[] bytes = new byte[values.length];
    for (int i = 0; i < values.length; i++) {
      bytes[i] = (byte) values[i];
    }
    return bytes;
  }

  static byte[] segment(int marker, byte[] data) {
    int length = data.length + 2;
    return join(bytes(0xFF, marker, length >> 8, length & 255), data);
  }

  /** The picture with these segments put in right after its SOI. */
  static byte[] withSegments(byte[] jpeg, byte[]... segments) {
    return join(Arrays.copyOf(jpeg, 2), join(segments), Arrays.copyOfRange(jpeg, 2, jpeg.length));
  }

  /** The picture without its JFIF header. */
  static byte[] withoutJfif(byte[] jpeg) {
    JpegSegment first = JpegStructure.read(jpeg).orThrow().segments().get(0);
    return join(Arrays.copyOf(jpeg, 2), Arrays.copyOfRange(jpeg, first.dataEnd(), jpeg.length));
  }

  /** The picture with other component ids in its frame and scan headers. */
  static byte[] withComponentIds(byte[] jpeg, int... ids) {
    byte[] changed = jpeg.clone();
    for (JpegSegment segment : JpegStructure.read(jpeg).orThrow().segments()) {
      for (int i = 0; i < ids.length; i++) {
        if (Markers.isFrame(segment.marker())) {
          changed[segment.dataStart() + 6 + 3 * i] = (byte) ids[i];
        } else if (segment.marker() == Markers.SOS) {
          changed[segment.dataStart() + 1 + 2 * i] = (byte) ids[i];
        }
      }
    }
    return changed;
  }

  /** A box of an ISO base media file. */
  static byte[] box(String type, byte[] data) {
    int length = data.length + 8;
    return join(
        bytes(length >>> 24, length >> 16 & 255, length >> 8 & 255, length & 255),
        latin(type),
        data);
  }

  /** A TIFF directory entry of one LONG, most significant byte first. */
  static byte[] entry(int tag, int value) {
    return bytes(
        tag >> 8,
        tag & 255,
        0,
        4,
        0,
        0,
        0,
        1,
        value >>> 24,
        value >> 16 & 255,
        value >> 8 & 255,
        value & 255);
  }
}
