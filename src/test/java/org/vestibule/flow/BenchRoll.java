package org.vestibule.flow;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Locale;
import org.vestibule.samples.PhoneJpeg;

/**
 * Lays out the home folder of an invented practice for {@link IngestBench}: visits, a manifest, and
 * photographs that are one picture with other times taken, so that each has bytes of its own.
 */
final class BenchRoll {

  /** Photographs of one visit, as common practice has them (no source). */
  private static final int PER_VISIT = 12;

  private static final LocalDateTime MORNING = LocalDateTime.of(2026, 3, 12, 8, 0);

  private BenchRoll() {}

  /**
   * Writes the home.
   *
   * @param jpeg the picture, without Exif
   * @param orientation Exif's, 1 to 8
   */
  static void layOut(Path home, byte[] jpeg, int count, int orientation) throws IOException {
    Path inbox = Files.createDirectories(home.resolve("inbox"));
    StringBuilder visits = new StringBuilder("visit,patient id,name,birth date,sex,start,end\n");
    StringBuilder manifest = new StringBuilder("file,visit,view,mirror\n");
    for (int i = 0; i < count; i++) {
      int visit = i / PER_VISIT;
      LocalDateTime start = MORNING.plusMinutes(20L * visit);
      if (i % PER_VISIT == 0) {
        visits.append(
            String.format(
                Locale.ROOT,
                "V%d,P%d,\"Tallgrass, Orla\",1990-01-02,F,%s,%s%n",
                visit,
                visit,
                start.toString().replace('T', ' '),
                start.plusMinutes(20).toString().replace('T', ' ')));
      }
      String name = String.format(Locale.ROOT, "IMG_%04d.JPG", i + 1);
      LocalDateTime taken = start.plusMinutes(1).plusSeconds(30L * (i % PER_VISIT));
      Files.write(inbox.resolve(name), with(jpeg, taken, orientation));
      // Exif tells of a smaller picture, as after an edit, so that somebody has to have looked.
      manifest.append(name + ",V" + visit + ",frontal,none seen\n");
    }
    Files.writeString(home.resolve("visits.csv"), visits, StandardCharsets.UTF_8);
    Files.writeString(inbox.resolve("manifest.csv"), manifest, StandardCharsets.UTF_8);
  }

  /** The picture with the Exif segment of a photograph taken then. */
  private static byte[] with(byte[] jpeg, LocalDateTime taken, int orientation) {
    byte[] small =
        PhoneJpeg.builder(new BufferedImage(16, 16, BufferedImage.TYPE_INT_RGB))
            .camera("Lumo", "Lumo P1")
            .takenAt(taken)
            .offset(ZoneOffset.ofHours(1))
            .orientation(orientation)
            .bytes();
    int at = 2;
    while ((small[at + 1] & 0xff) != 0xe1) {
      at += 2 + length(small, at);
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(jpeg, 0, 2);
    out.write(small, at, 2 + length(small, at));
    // A phone writes no JFIF segment beside its Exif.
    int rest = (jpeg[3] & 0xff) == 0xe0 ? 4 + length(jpeg, 2) : 2;
    out.write(jpeg, rest, jpeg.length - rest);
    return out.toByteArray();
  }

  private static int length(byte[] jpeg, int marker) {
    return ((jpeg[marker + 2] & 0xff) << 8) | (jpeg[marker + 3] & 0xff);
  }
}
