package org.vestibule.dicom.net;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;

/** Part 10 files laid down by hand (PS3.10 7.1), with noise where a picture would be. */
final class Photographs {

  static final String PHOTOGRAPH = "1.2.840.10008.5.1.4.1.1.77.1.4";
  static final String JPEG = "1.2.840.10008.1.2.4.50";

  private Photographs() {}

  /** A file whose data set has this many bytes in its one fragment; an even number. */
  static Path write(Path folder, String instance, int pictureBytes) throws IOException {
    Path file = folder.resolve(instance + ".dcm");
    byte[] picture = new byte[pictureBytes];
    new Random(pictureBytes).nextBytes(picture);
    return Files.write(file, Laid.join(head(instance), dataSet(instance, picture)));
  }

  static byte[] dataSet(String instance, byte[] picture) {
    return Laid.join(
        explicit(8, 0x16, "UI", Laid.ascii(PHOTOGRAPH)),
        explicit(8, 0x18, "UI", Laid.ascii(instance)),
        explicit(0x10, 0x20, "LO", Laid.ascii("KITE7 ")),
        explicit(0x20, 0x0D, "UI", Laid.ascii("2.25.71")),
        explicit(0x20, 0x0E, "UI", Laid.ascii("2.25.72")),
        Laid.hex("E07F1000 4F420000 FFFFFFFF FEFF00E0 00000000 FEFF00E0"),
        Laid.little(picture.length, 4),
        picture,
        Laid.hex("FEFFDDE0 00000000"));
  }

  private static byte[] head(String instance) {
    byte[] meta =
        Laid.join(
            Laid.hex("02000100 4F420000 02000000 0001"),
            explicit(2, 2, "UI", Laid.ascii(PHOTOGRAPH)),
            explicit(2, 3, "UI", Laid.ascii(instance)),
            explicit(2, 0x10, "UI", Laid.ascii(JPEG)),
            explicit(2, 0x12, "UI", Laid.ascii("1.2.3.4")));
    return Laid.join(
        new byte[128], Laid.ascii("DICM"), explicit(2, 0, "UL", Laid.little(meta.length, 4)), meta);
  }

  /** The short form of an explicit element (PS3.5 7.1.2). */
  private static byte[] explicit(int group, int element, String vr, byte[] value) {
    byte[] even = (value.length & 1) == 0 ? value : Laid.join(value, new byte[1]);
    return Laid.join(
        Laid.little(group, 2),
        Laid.little(element, 2),
        Laid.ascii(vr),
        Laid.little(even.length, 2),
        even);
  }
}
