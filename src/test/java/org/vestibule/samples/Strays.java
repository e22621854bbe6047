package org.vestibule.samples;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import javax.imageio.ImageIO;
import org.vestibule.intake.TinyHeif;

/** The other files that lie in every camera roll, made of those that were drawn. */
final class Strays {

  private Strays() {}

  /** Names and bytes, given the roll's photographs. */
  static Map<String, byte[]> of(Map<String, byte[]> photographs) throws IOException {
    Map<String, byte[]> strays = new LinkedHashMap<>();
    byte[] twin = photographs.get("20260312_104630.jpg");
    byte[] cut = photographs.get("IMG_0021.JPG");
    strays.put("Copy of 20260312_104630.jpg", twin);
    strays.put("IMG_0043.JPG", Arrays.copyOf(cut, 40_000));
    strays.put("IMG_0044.JPG", new byte[0]);
    strays.put(
        "IMG_0041.HEIC", TinyHeif.taken(LocalDateTime.of(2026, 3, 12, 10, 58, 12), "Examplon P1"));
    strays.put("IMG_0005.MOV", boxes("qt  ", "qt  "));
    strays.put("IMG_0042.PNG", png());
    strays.put(
        "IMG_0007.xmp",
        "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\"/>\n".getBytes(StandardCharsets.UTF_8));
    strays.put(".DS_Store", "\0\0\0\1Bud1".getBytes(StandardCharsets.US_ASCII));
    return strays;
  }

  /**
   * The opening box of an ISO base media file, and a box of nothing (ISO 14496-12, from memory).
   */
  private static byte[] boxes(String brand, String compatible) {
    ByteBuffer out = ByteBuffer.allocate(24 + 8 + 256);
    out.putInt(24).put(("ftyp" + brand).getBytes(StandardCharsets.US_ASCII)).putInt(0);
    out.put((compatible + brand).getBytes(StandardCharsets.US_ASCII));
    out.putInt(8 + 256).put("mdat".getBytes(StandardCharsets.US_ASCII));
    return out.array();
  }

  private static byte[] png() throws IOException {
    BufferedImage picture = Cartoon.mug(240, 320);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(picture, "png", out);
    return out.toByteArray();
  }
}
