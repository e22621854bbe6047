package org.vestibule.intake;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Whatever lies in a folder: no crash, and each file comes back exactly once, taken or named. */
class IntakeFuzzTest {

  private static final long SEED = 4711;
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2030-01-01T00:00:00Z"), ZoneOffset.UTC);

  @Test
  void everyFileComesBackOnce() throws IOException {
    System.err.println("seed " + SEED);
    Random random = new Random(SEED);
    byte[] heif = TinyHeif.with(tiff().bytes());
    byte[] jpeg =
        TestJpeg.of(5)
            .exif(tiff())
            .xmp("<x:xmpmeta/>")
            .segment(0xE2, "ICC_PROFILE\0\1\1", new byte[200])
            .bytes();
    try (FileSystem files = Jimfs.newFileSystem(Configuration.unix())) {
      Path folder = Files.createDirectory(files.getPath("/inbox"));
      Set<String> names = new HashSet<>();
      for (int i = 0; i < 600; i++) {
        String name = name(random, i);
        names.add(name);
        byte[] bytes =
            switch (random.nextInt(6)) {
              case 0 -> noise(random);
              case 1 -> damaged(random, heif);
              default -> damaged(random, jpeg);
            };
        Files.write(folder.resolve(name), bytes);
      }
      Roll roll = Intake.read(folder, IntakeRules.DEFAULT.withoutSettling(), CLOCK);
      Set<String> back = new HashSet<>();
      roll.photos().forEach(photo -> back.add(photo.arrival().name()));
      roll.leftOut().forEach(left -> back.add(left.name()));
      assertThat(back).isEqualTo(names);
      assertThat(roll.photos().size() + roll.leftOut().size()).isEqualTo(names.size());
      assertThat(roll.photos()).hasSizeGreaterThan(50);
      assertThat(roll.leftOut()).hasSizeGreaterThan(50);
      for (LeftOut left : roll.leftOut()) {
        assertThat(left.reason()).isNotBlank();
        assertThat(left.advice()).isNotBlank();
        assertThat(left.sentence().codePoints().noneMatch(Character::isISOControl)).isTrue();
      }
    }
  }

  private static TinyTiff tiff() {
    return new TinyTiff(ByteOrder.LITTLE_ENDIAN)
        .text(Tag.MAKE, "Invented Works")
        .text(Tag.MODEL, "Model 1")
        .shorts(Tag.ORIENTATION, 6)
        .rational(Tag.EXPOSURE_TIME, 1, 120)
        .text(Tag.DATE_TIME_ORIGINAL, "2026:11:24 09:30:05")
        .text(Tag.OFFSET_TIME_ORIGINAL, "+01:00")
        .undefined(Tag.MAKER_NOTE, new byte[60])
        .latitude(47);
  }

  private static String name(Random random, int number) {
    StringBuilder name = new StringBuilder();
    int length = random.nextInt(12);
    for (int i = 0; i < length; i++) {
      int c = random.nextInt(4) == 0 ? random.nextInt(0x2FFF) + 1 : random.nextInt(95) + 32;
      if (c != '/' && Character.isDefined(c)) {
        name.appendCodePoint(c);
      }
    }
    String[] endings = {".jpg", ".JPG", "", ".heic", ".mov", ".csv", ".part", "~", ".aae"};
    return name + "-" + number + endings[random.nextInt(random.nextBoolean() ? 1 : endings.length)];
  }

  private static byte[] noise(Random random) {
    byte[] bytes = new byte[random.nextInt(200)];
    random.nextBytes(bytes);
    return bytes;
  }

  private static byte[] damaged(Random random, byte[] whole) {
    byte[] bytes = whole.clone();
    int hits = random.nextInt(6);
    for (int i = 0; i < hits; i++) {
      bytes[random.nextInt(Math.min(bytes.length, 500))] = (byte) random.nextInt(256);
    }
    return random.nextInt(8) == 0 ? Arrays.copyOf(bytes, random.nextInt(bytes.length)) : bytes;
  }
}
