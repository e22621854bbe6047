package org.vestibule.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.ExternalTool;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;

/** Which files are taken, and in which words the others are left out. */
class IntakeTest {

  private static final Instant NOW = Instant.parse("2026-11-25T18:00:00Z");
  private static final Instant LONG_AGO = NOW.minus(Duration.ofDays(1));
  private static final Clock CLOCK = Clock.fixed(NOW, ZoneOffset.UTC);

  @TempDir Path folder;

  @Test
  void takesPhotographsFromSubfoldersInOrderOfNames() throws IOException {
    put("b/2.jpg", TestJpeg.of(1).bytes());
    put("b/1.JPG", TestJpeg.of(2).bytes());
    put("a é ü.jpeg", TestJpeg.of(3).bytes());
    put("z/deep/er/no-extension", TestJpeg.of(4).bytes());
    Roll roll = read();
    assertThat(roll.photos().stream().map(photo -> photo.arrival().name()))
        .containsExactly("a é ü.jpeg", "b/1.JPG", "b/2.jpg", "z/deep/er/no-extension");
    assertThat(roll.leftOut()).isEmpty();
    Photo first = roll.photos().get(0);
    assertThat(first.arrival().hash()).isEqualTo(ContentHash.of(TestJpeg.of(3).bytes()));
    assertThat(first.arrival().modified()).isEqualTo(LONG_AGO);
    assertThat(first.bytes().orThrow()).isEqualTo(TestJpeg.of(3).bytes());
  }

  @Test
  void saysThatTheSameBytesCameTwice() throws IOException {
    put("a.jpg", TestJpeg.of(1).bytes());
    put("sub/b.jpg", TestJpeg.of(1).bytes());
    Roll roll = read();
    assertThat(roll.photos()).hasSize(1);
    assertThat(only(roll).sentence())
        .isEqualTo(
            "sub/b.jpg: it has the same bytes as a.jpg; only the first is taken; nothing needs to"
                + " be done");
    assertThat(only(roll).kind()).isEqualTo(LeftOutKind.DUPLICATE);
    assertThat(only(roll).hash()).isEqualTo(roll.photos().get(0).arrival().hash());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        ".DS_Store|SYSTEM_FILE",
        "Thumbs.db|SYSTEM_FILE",
        "desktop.ini|SYSTEM_FILE",
        "._IMG_1.jpg|SYSTEM_FILE",
        "IMG_1.AAE|SIDECAR",
        "IMG_1.xmp|SIDECAR",
        "IMG_1.jpg.json|SIDECAR",
        "manifest.csv|LIST",
        "visits.tsv|LIST",
        "IMG_1.jpg.part|PARTIAL_COPY",
        "IMG_1.jpg.crdownload|PARTIAL_COPY",
        "IMG_1.tmp|PARTIAL_COPY",
        "IMG_1.jpg~|PARTIAL_COPY",
        ".IMG_1.jpg.icloud|CLOUD_PLACEHOLDER",
      })
  void knowsFilesByTheirNames(String name, LeftOutKind kind) throws IOException {
    put(name, "anything".getBytes(StandardCharsets.UTF_8));
    LeftOut left = only(read());
    assertThat(left.kind()).isEqualTo(kind);
    assertThat(left.name()).isEqualTo(name);
    assertThat(left.kind().needsPerson()).isFalse();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "89504E470D0A1A0A0000000D|OTHER_PICTURE|it is a PNG picture, whatever its name says, only"
            + " JPEG is taken; it may be a screenshot; take the photograph itself",
        "474946383961010001008000|OTHER_PICTURE|it is a GIF picture, whatever its name says, only"
            + " JPEG is taken; take the photograph itself",
        "524946461A00000057454250|OTHER_PICTURE|it is a WebP picture, whatever its name says, only"
            + " JPEG is taken; it came through a messenger or a browser; take the original",
        "49492A000800000000000000|OTHER_PICTURE|it is a TIFF or raw picture, whatever its name"
            + " says, only JPEG is taken; export it as JPEG at full size, or leave it out",
        "00000018667479706D703432|VIDEO|it is a video, only photographs are taken; keep it elsewhere"
            + " if it belongs to the record",
        "000000186674797068656963|HEIC|it is a HEIC, HEIF or AVIF picture, only JPEG is taken;"
            + " converting it would change the picture, and its time can't be read; set the phone's"
            + " camera to save JPEG (often called the most compatible format), take the original"
            + " again or let the phone itself share it as JPEG; this file keeps waiting",
        "000000186674797061766966|HEIC|it is a HEIC, HEIF or AVIF picture, only JPEG is taken;"
            + " converting it would change the picture, and its time can't be read; set the phone's"
            + " camera to save JPEG (often called the most compatible format), take the original"
            + " again or let the phone itself share it as JPEG; this file keeps waiting",
        "255044462D312E3400000000|NOT_A_PICTURE|it is a PDF document; take it out of the folder",
        "48656C6C6F20776F726C6421|DAMAGED|it is named like a picture, but its bytes are none; copy it"
            + " from the phone again",
        "000000000000000000000000|DAMAGED|it starts with zeros only: its copy or download never"
            + " finished; copy it from the phone again",
        "FFD8FFE000104A4649460001|DAMAGED|the file ends at byte 12, before its 16 bytes of the APP0"
            + " segment at byte 2 are complete; copy it from the phone again, or leave it out if the"
            + " original is damaged too",
      })
  void knowsFilesByTheirFirstBytesWhateverTheirName(String hex, LeftOutKind kind, String words)
      throws IOException {
    put("IMG_1.jpg", HexFormat.of().parseHex(hex));
    LeftOut left = only(read());
    assertThat(left.kind()).isEqualTo(kind);
    assertThat(left.sentence()).isEqualTo("IMG_1.jpg: " + words);
    assertThat(left.kind().needsPerson()).isEqualTo(kind != LeftOutKind.NOT_A_PICTURE);
  }

  @Test
  void leavesOutAnEmptyFile() throws IOException {
    put("IMG_1.jpg", new byte[0]);
    assertThat(only(read()).sentence())
        .isEqualTo(
            "IMG_1.jpg: it is empty (0 bytes); if its copy or download is still running it will be"
                + " taken later; otherwise copy it from the phone again");
  }

  @Test
  void leavesOutAPictureThatBreaksOff() throws IOException {
    byte[] whole = TestJpeg.of(64, 64, 1).bytes();
    put("IMG_1.jpg", Arrays.copyOf(whole, whole.length - 20));
    LeftOut left = only(read());
    assertThat(left.kind()).isEqualTo(LeftOutKind.DAMAGED);
    assertThat(left.reason())
        .isEqualTo(
            "the file breaks off at byte "
                + (whole.length - 20)
                + ": the picture's data ends too early, near byte "
                + (whole.length - 20)
                + ", in row 3 of 4 block rows; the first 32 of its 64 rows (50 %) are sound");
    assertThat(left.advice())
        .isEqualTo(
            "copy it from the phone again; if the phone's own file is cut short too, a person can"
                + " file the sound part (file --salvage)");
    assertThat(left.hash()).isNotNull();
  }

  /** Only the end marker is gone: T.81 B.2.1 wants it, the picture does not need it. */
  @Test
  void saysSoWhereOnlyTheEndMarkerIsMissing() throws IOException {
    byte[] whole = TestJpeg.of(64, 64, 1).bytes();
    put("IMG_1.jpg", Arrays.copyOf(whole, whole.length - 2));
    assertThat(only(read()).sentence())
        .isEqualTo(
            "IMG_1.jpg: the file breaks off at byte "
                + (whole.length - 2)
                + ", before the picture's end marker, but every row of the picture is there; copy it"
                + " from the phone again; if the phone's own file is the same, file it: nothing of"
                + " the picture is missing");
  }

  @Test
  void handsEachPhotographOnWhileItsBytesAreAtHand() throws IOException {
    put("IMG_1.jpg", TestJpeg.of(1).bytes());
    put("IMG_1.txt", new byte[] {1});
    put("IMG_2.jpg", TestJpeg.of(2).bytes());
    put("IMG_3.jpg", TestJpeg.of(1).bytes());
    List<String> handed = new ArrayList<>();
    Roll roll =
        Intake.read(
            folder,
            IntakeRules.DEFAULT.withoutSettling(),
            CLOCK,
            (photo, bytes, before, of) -> {
              assertThat(ContentHash.of(bytes)).isEqualTo(photo.arrival().hash());
              handed.add(photo.arrival().name() + " after " + before + " of " + of);
            });
    assertThat(handed).containsExactly("IMG_1.jpg after 0 of 4", "IMG_2.jpg after 2 of 4");
    assertThat(roll.photos()).hasSize(2);
  }

  @Test
  void leavesOutATooLargeFileUnread() throws IOException {
    byte[] bytes = TestJpeg.of(1).bytes();
    put("IMG_1.jpg", bytes);
    Roll roll = Intake.read(folder, new IntakeRules(Duration.ZERO, bytes.length - 1), CLOCK);
    assertThat(only(roll).kind()).isEqualTo(LeftOutKind.TOO_LARGE);
    assertThat(only(roll).hash()).isNull();
    assertThat(Intake.read(folder, new IntakeRules(Duration.ZERO, bytes.length), CLOCK).photos())
        .hasSize(1);
  }

  @Test
  void knowsTheMovingPartOfAPhotographByItsName() throws IOException {
    byte[] video = HexFormat.of().parseHex("000000186674797071742020");
    put("IMG_1.jpg", TestJpeg.of(1).bytes());
    put("img_1.MOV", video);
    put("IMG_2.MOV", video);
    assertThat(read().leftOut().stream().map(LeftOut::kind))
        .containsExactly(LeftOutKind.VIDEO, LeftOutKind.VIDEO_COMPANION);
  }

  @Test
  void waitsForFilesThatChangedJustNowOrInTheFuture() throws IOException {
    Path file = put("IMG_1.jpg", TestJpeg.of(1).bytes());
    IntakeRules rules = new IntakeRules(Duration.ofSeconds(10), 1_000_000);
    Files.setLastModifiedTime(file, FileTime.from(NOW.minusSeconds(10)));
    assertThat(Intake.read(folder, rules, CLOCK).photos()).hasSize(1);
    Files.setLastModifiedTime(file, FileTime.from(NOW.minusSeconds(9)));
    assertThat(only(Intake.read(folder, rules, CLOCK)).sentence())
        .isEqualTo(
            "IMG_1.jpg: it was changed less than 10 seconds ago; it is looked at again on the next"
                + " run");
    Files.setLastModifiedTime(file, FileTime.from(NOW.plusSeconds(1)));
    LeftOut future = only(Intake.read(folder, rules, CLOCK));
    assertThat(future.kind()).isEqualTo(LeftOutKind.NOT_SETTLED);
    assertThat(future.reason())
        .isEqualTo(
            "its time of change lies in the future, so nobody can say whether it has settled");
    assertThat(Intake.read(folder, rules.withoutSettling(), CLOCK).photos()).hasSize(1);
  }

  @Test
  void seesThatAFileChangedWhileItWasRead() throws IOException {
    Path file = put("IMG_1.jpg", TestJpeg.of(1).bytes());
    Settling settling = new Settling(Duration.ZERO, CLOCK);
    FoundFile found = new FoundFile(file, "IMG_1.jpg", Files.size(file), LONG_AGO);
    assertThat(settling.changedSince(found, found.sizeBytes())).isEmpty();
    assertThat(settling.changedSince(found, found.sizeBytes() + 1)).isPresent();
    Files.setLastModifiedTime(file, FileTime.from(LONG_AGO.plusSeconds(1)));
    assertThat(settling.changedSince(found, found.sizeBytes()).orElseThrow().reason())
        .isEqualTo("it changed while it was read");
  }

  @Test
  void neverHandsOutOtherBytesThanThoseItRead() throws IOException {
    Path file = put("IMG_1.jpg", TestJpeg.of(1).bytes());
    Photo photo = read().photos().get(0);
    Files.write(file, TestJpeg.of(2).bytes());
    Outcome<byte[]> changed = photo.bytes();
    assertThat(changed).isInstanceOf(Outcome.Refused.class);
    assertThat(((Outcome.Refused<byte[]>) changed).reason())
        .isEqualTo("IMG_1.jpg has changed since it was read a moment ago");
    byte[] oneByteOff = TestJpeg.of(1).bytes();
    oneByteOff[oneByteOff.length - 3] ^= 1;
    Files.write(file, oneByteOff);
    assertThat(photo.bytes()).isInstanceOf(Outcome.Refused.class);
    Files.delete(file);
    assertThat(((Outcome.Refused<byte[]>) photo.bytes()).reason())
        .isEqualTo("IMG_1.jpg can no longer be read (it is no longer there)");
  }

  @Test
  void namesLinksAndDoesNotFollowThem() throws IOException {
    put("a/IMG_1.jpg", TestJpeg.of(1).bytes());
    Files.createSymbolicLink(folder.resolve("a/loop"), folder);
    Files.createSymbolicLink(folder.resolve("link.jpg"), folder.resolve("a/IMG_1.jpg"));
    Files.createSymbolicLink(folder.resolve("gone.jpg"), folder.resolve("nowhere"));
    Roll roll = read();
    assertThat(roll.photos()).hasSize(1);
    assertThat(roll.leftOut().stream().map(LeftOut::sentence))
        .containsExactly(
            "a/loop: it is a link, which is not followed; put the photographs themselves into the"
                + " folder",
            "gone.jpg: it is a link, which is not followed; put the photographs themselves into the"
                + " folder",
            "link.jpg: it is a link, which is not followed; put the photographs themselves into the"
                + " folder");
  }

  @Test
  void saysWhichFoldersItCannotRead() throws IOException {
    put("a.jpg", TestJpeg.of(1).bytes());
    Path closed = Files.createDirectory(folder.resolve("closed"));
    Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("---------"));
    try {
      Assumptions.assumeFalse(
          Files.isReadable(closed), "SKIPPED: this account may read every folder");
      assertThat(only(read()).sentence())
          .isEqualTo(
              "closed: the folder can't be read (access is denied); check the rights on it; nothing"
                  + " in it was taken");
    } finally {
      Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("rwx------"));
    }
  }

  @Test
  void aMissingFolderIsSaidAndNeedsAPerson() {
    Roll roll = Intake.read(folder.resolve("nowhere"), IntakeRules.DEFAULT, CLOCK);
    assertThat(only(roll).reason()).isEqualTo("the folder is not there");
    assertThat(only(roll).kind().needsPerson()).isTrue();
  }

  @Test
  void warnsOfASecondCopyWithOtherBytes() throws IOException {
    put("IMG_1.jpg", TestJpeg.of(1).bytes());
    put("IMG_1 (1).jpg", TestJpeg.of(2).bytes());
    put("IMG_1 (conflicted copy 2026-11-24).jpg", TestJpeg.of(3).bytes());
    put("IMG_2 (1).jpg", TestJpeg.of(4).bytes());
    List<Photo> photos = read().photos();
    String words = "its name says it is a second copy of IMG_1.jpg, but their bytes differ";
    assertThat(photos.get(0).warnings()).containsExactly(words);
    assertThat(photos.get(1).warnings()).containsExactly(words);
    assertThat(photos.get(2).warnings()).isEmpty();
    assertThat(photos.get(3).warnings()).isEmpty();
  }

  @Test
  void changesNothingInTheFolder() throws IOException {
    put("a/IMG_1.jpg", TestJpeg.of(1).bytes());
    put("IMG_2.heic", HexFormat.of().parseHex("000000186674797068656963"));
    List<String> before = listing();
    read();
    assertThat(listing()).isEqualTo(before);
  }

  @Test
  void keepsTheTimeOfAHeicPicture() throws Exception {
    byte[] tiff =
        new TinyTiff(ByteOrder.BIG_ENDIAN)
            .text(Tag.MODEL, "Model 1")
            .text(Tag.DATE_TIME_ORIGINAL, "2026:11:24 09:30:05")
            .bytes();
    Path file = put("IMG_1.HEIC", TinyHeif.with(tiff));
    LeftOut left = only(read());
    assertThat(left.kind()).isEqualTo(LeftOutKind.HEIC);
    assertThat(left.facts()).isNotNull();
    assertThat(left.facts().takenAt()).isEqualTo("2026-11-24T09:30:05");
    assertThat(left.reason()).doesNotContain("can't be read");
    String other =
        ExternalTool.require("exiftool", "libimage-exiftool-perl")
            .run("-s3", "-DateTimeOriginal", "-Model", file.toString())
            .text();
    assertThat(other.lines()).containsExactly("2026:11:24 09:30:05", "Model 1");
  }

  private List<String> listing() throws IOException {
    try (var files = Files.walk(folder)) {
      return files.map(file -> file + " " + file.toFile().lastModified()).sorted().toList();
    }
  }

  private Path put(String name, byte[] bytes) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    Files.write(file, bytes);
    Files.setLastModifiedTime(file, FileTime.from(LONG_AGO));
    return file;
  }

  private Roll read() {
    return Intake.read(folder, IntakeRules.DEFAULT, CLOCK);
  }

  private static LeftOut only(Roll roll) {
    assertThat(roll.leftOut()).hasSize(1);
    return roll.leftOut().get(0);
  }
}
