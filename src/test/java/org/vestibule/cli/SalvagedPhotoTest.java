package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/**
 * A photograph whose file breaks off is never filed half grey: it waits with the share that is
 * sound, and a person may file that share, which then says of itself that it is a part. What the
 * rows hold is compared with what djpeg makes of the damaged file.
 */
class SalvagedPhotoTest {

  private static final String SAID = "--visit V1 --view frontal --mirror none --by Ada";

  @TempDir private Path folder;

  private TestHome home;
  private byte[] cut;
  private String id;

  @BeforeEach
  void takeInWhatBreaksOff() throws IOException {
    home = TestHome.in(folder);
    byte[] whole = TestHome.photo(Scene.FRONTAL, 4).orientation(1).bytes();
    cut = Arrays.copyOf(whole, whole.length * 6 / 10);
    id = home.put("cut.jpg", cut);
    assertThat(home.ingest().filed()).isEmpty();
  }

  @Test
  void waitsWithTheShareThatIsSound() throws IOException {
    String waiting = Asked.of(home, "waiting").out().replaceAll("\\s+", " ");
    assertThat(waiting)
        .contains("the file breaks off at byte " + cut.length + ": ")
        .containsPattern("the first \\d+ of its \\d+ rows \\(\\d+ %\\) are sound")
        .contains("a person can file the sound part (file --salvage)");
  }

  @Test
  void isNotFiledUnlessSomebodySaysSo() {
    Asked asked = file(SAID);
    assertThat(asked.code()).isEqualTo(3);
    assertThat(asked.err()).contains(" are sound");
    assertThat(Asked.of(home, "find", "frontal", "--state", "filed").out()).doesNotContain(id);
  }

  @Test
  void theSoundPartIsFiledAndSaysThatItIsAPart() throws Exception {
    Asked asked = file(SAID + " --salvage");
    assertThat(asked.err()).isEmpty();
    Matcher rows =
        Pattern.compile("not the whole photograph: rows 1 to (\\d+) of (\\d+)")
            .matcher(asked.out().replaceAll("\\s+", " "));
    assertThat(rows.find()).as(asked.out()).isTrue();
    int kept = Integer.parseInt(rows.group(1));
    assertSays(rows.group());
    assertThat(Asked.of(home, "export", id).code()).isZero();
    byte[] filed = pixels(Files.readAllBytes(home.folder().resolve(id + ".jpg")));
    byte[] damaged = pixels(cut);
    int rowBytes = damaged.length / Integer.parseInt(rows.group(2));
    // The last row of blocks is smoothed against the grey below it when the damaged file is
    // decoded.
    int compared = (kept - 16) * rowBytes;
    assertThat(filed).hasSize(kept * rowBytes);
    assertThat(Arrays.copyOf(filed, compared)).isEqualTo(Arrays.copyOf(damaged, compared));
  }

  /** The file is gone and the photograph is moved: what is made of the kept frame is a part too. */
  @Test
  void aCorrectionIsAPartToo() throws Exception {
    String said = file(SAID + " --salvage").out().replaceAll("\\s+", " ");
    Files.delete(home.inbox().resolve("cut.jpg"));
    Asked moved =
        Asked.of(home, "move", id, "--stage", "before", "--why", "forgotten", "--by", "Ada");
    assertThat(moved.err()).isEmpty();
    Matcher rows =
        Pattern.compile("not the whole photograph: rows 1 to \\d+ of \\d+").matcher(said);
    assertThat(rows.find()).isTrue();
    assertThat(moved.out().replaceAll("\\s+", " ")).contains(rows.group());
    assertSays(rows.group());
  }

  @Test
  void aWholePictureHasNothingToSalvage() throws IOException {
    String whole = home.put("whole.jpg", Scene.FRONTAL, 5);
    home.ingest();
    Asked asked = Asked.of(home, ("file " + whole + " " + SAID + " --salvage").split(" "));
    assertThat(asked.code()).isEqualTo(3);
    assertThat(asked.err().replaceAll("\\s+", " "))
        .contains("the picture is whole")
        .contains("file it as it is");
  }

  private Asked file(String said) {
    return Asked.of(home, ("file " + id + " " + said).split(" "));
  }

  /** Image Comments and Derivation Description (PS3.3 C.7.6.1), read by dcmdump. */
  private void assertSays(String remark) throws Exception {
    String rows = remark.substring(remark.indexOf("rows"));
    String path = Asked.of(home, "find", "frontal", "--paths").out().strip();
    String dump =
        ExternalTool.require("dcmdump", "dcmtk")
            .run("+L", "+P", "ImageComments", "+P", "DerivationDescription", path)
            .text();
    assertThat(dump)
        .contains("NOT THE WHOLE PHOTOGRAPH: its file is damaged, this is " + rows)
        .contains("Sound part of a damaged file, nothing re-encoded: " + rows);
  }

  /** The samples behind the header of a portable pixmap: three lines. */
  private static byte[] pixels(byte[] jpeg) throws Exception {
    byte[] pixmap = ExternalTool.require("djpeg", "libjpeg-turbo-progs").run(jpeg, "-pnm").output();
    int at = 0;
    for (int lines = 0; lines < 3; at++) {
      lines += pixmap[at] == '\n' ? 1 : 0;
    }
    return Arrays.copyOfRange(pixmap, at, pixmap.length);
  }
}
