package org.vestibule.intake;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;

/** Odd names, and names on another system. */
class FileNamesTest {

  @Test
  void namesArePrintedWithoutTricks() {
    assertThat(FileNames.shown("a\nb\tc\u001b[31m")).isEqualTo("a\\u000Ab\\u0009c\\u001B[31m");
    assertThat(FileNames.shown("photo\u202Egpj.exe")).isEqualTo("photo\\u202Egpj.exe");
    assertThat(FileNames.shown("Zähne 16 – vorher 😀.jpg")).isEqualTo("Zähne 16 – vorher 😀.jpg");
  }

  @Test
  void twoSpellingsOfOneNameHaveOneKey() {
    assertThat(FileNames.key("Za\u0308hne.JPG")).isEqualTo(FileNames.key("z\u00E4hne.jpg"));
  }

  @Test
  void partsOfANameStandWhereTheyShould() {
    assertThat(FileNames.extension("a.b/IMG_1")).isEmpty();
    assertThat(FileNames.extension(".hidden")).isEmpty();
    assertThat(FileNames.extension("a/x.tar.GZ")).isEqualTo("gz");
    assertThat(FileNames.stem("a.b/IMG_1.jpg")).isEqualTo("a.b/IMG_1");
    assertThat(FileNames.stem("a.b/IMG_1")).isEqualTo("a.b/IMG_1");
    assertThat(FileNames.folder("a/b/c.jpg")).isEqualTo("a/b/");
    assertThat(FileNames.last("a/b/c.jpg")).isEqualTo("c.jpg");
  }

  /** A model of a Windows file system: backslashes, a drive, names without regard to capitals. */
  @Test
  void windowsPathsBecomeNamesWithForwardSlashes() throws IOException {
    try (FileSystem windows = Jimfs.newFileSystem(Configuration.windows())) {
      Path inbox = windows.getPath("C:\\Inbox");
      Files.createDirectories(inbox.resolve("Chair 2\\sub"));
      Path file = inbox.resolve("Chair 2\\sub\\IMG_1.JPG");
      Files.write(file, TestJpeg.of(1).bytes());
      Files.write(inbox.resolve("img_1.aae"), new byte[] {1});
      Files.write(inbox.resolve("IMG_1.jpg"), TestJpeg.of(2).bytes());
      for (Path taken : new Path[] {file, inbox.resolve("IMG_1.jpg")}) {
        Files.setLastModifiedTime(taken, FileTime.from(Instant.parse("2026-11-24T10:00:00Z")));
      }
      Roll roll =
          Intake.read(
              inbox,
              IntakeRules.DEFAULT,
              Clock.fixed(Instant.parse("2026-11-25T10:00:00Z"), ZoneOffset.UTC));
      assertThat(roll.photos().stream().map(photo -> photo.arrival().name()))
          .containsExactly("Chair 2/sub/IMG_1.JPG", "IMG_1.jpg");
      assertThat(roll.leftOut().get(0).kind()).isEqualTo(LeftOutKind.SIDECAR);
      assertThat(roll.photos().get(1).facts().editingTraces())
          .contains("a note of edits made on the phone (.aae) lies beside it");
      assertThat(roll.photos().get(0).bytes().orThrow()).isEqualTo(TestJpeg.of(1).bytes());
    }
  }

  /** Attribute bits of Windows (winnt.h, from memory). */
  @Test
  void cloudMarksAreKnown() {
    assertThat(CloudAttributes.marked(0x20)).isFalse();
    assertThat(CloudAttributes.marked(0x20 | 0x1000)).isTrue();
    assertThat(CloudAttributes.marked(0x40000)).isTrue();
    assertThat(CloudAttributes.marked(0x400000)).isTrue();
  }
}
