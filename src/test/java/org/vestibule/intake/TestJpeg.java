package org.vestibule.intake;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import javax.imageio.ImageIO;

/** A small real JPEG into which a test puts the segments it is about. */
final class TestJpeg {

  private static final int JFIF_END = 20;

  private final byte[] plain;
  private final ByteArrayOutputStream segments = new ByteArrayOutputStream();
  private byte[] trailing = new byte[0];

  private TestJpeg(byte[] plain) {
    this.plain = plain;
  }

  /** A picture of this size; the seed gives it its own colour and so its own bytes. */
  static TestJpeg of(int width, int height, int seed) {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = image.createGraphics();
    pen.setColor(new Color(seed * 977 & 0xFFFFFF));
    pen.fillRect(0, 0, width, height);
    pen.setColor(new Color(seed * 7919 + 0x404040 & 0xFFFFFF));
    pen.fillRect(seed % width, 0, width / 2 + 1, height / 2 + 1);
    pen.dispose();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      ImageIO.write(image, "jpg", out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new TestJpeg(out.toByteArray());
  }

  static TestJpeg of(int seed) {
    return of(16, 16, seed);
  }

  TestJpeg exif(TinyTiff tiff) {
    return segment(0xE1, "Exif\0\0", tiff.bytes());
  }

  TestJpeg xmp(String packet) {
    return segment(0xE1, "http://ns.adobe.com/xap/1.0/\0", packet.getBytes(StandardCharsets.UTF_8));
  }

  TestJpeg segment(int marker, String signature, byte[] data) {
    byte[] name = signature.getBytes(StandardCharsets.ISO_8859_1);
    int length = 2 + name.length + data.length;
    segments.write(0xFF);
    segments.write(marker);
    segments.write(length >> 8);
    segments.write(length);
    segments.writeBytes(name);
    segments.writeBytes(data);
    return this;
  }

  TestJpeg followedBy(byte[] bytes) {
    trailing = bytes;
    return this;
  }

  /** The file; the JDK's JFIF segment is left out, as phones leave it out. */
  byte[] bytes() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(plain, 0, 2);
    out.writeBytes(segments.toByteArray());
    out.write(plain, JFIF_END, plain.length - JFIF_END);
    out.writeBytes(trailing);
    return out.toByteArray();
  }
}
