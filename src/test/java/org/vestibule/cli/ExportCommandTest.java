package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/**
 * An exported JPEG shows what jpegtran, which knows nothing of us, makes of the phone's file:
 * turned as Exif asks (value 6: a quarter clockwise), then flipped where it was a mirror image.
 */
class ExportCommandTest {

  @TempDir private static Path folder;

  private static TestHome home;
  private static byte[] turnedFile;
  private static byte[] croppedFile;
  private static String turned;
  private static String cropped;
  private static String waits;

  @BeforeAll
  static void layOut() throws IOException {
    home = TestHome.in(folder);
    turnedFile = TestHome.photo(Scene.RIGHT_BUCCAL, 1).orientation(6).comment("PRIVATE").bytes();
    croppedFile = TestHome.photo(Scene.UPPER_OCCLUSAL, 2).orientation(1).bytes();
    turned = home.put("turned.jpg", turnedFile);
    cropped = home.put("cropped.jpg", croppedFile);
    waits = home.put("waits.jpg", Scene.FRONTAL, 3);
    home.manifest(
        """
        file,visit,view,mirror,incisors,crop
        turned.jpg,V1,right buccal,as shot,,
        cropped.jpg,V1,upper occlusal,as shot,top,0.2 0.25 0.8 0.75
        """);
    assertThat(home.ingest().filed()).hasSize(2);
  }

  @Test
  void theTurnedAndMirroredPictureIsWhatJpegtranMakes() throws Exception {
    Asked asked = Asked.of(home, "export", turned);
    assertThat(asked.err()).isEmpty();
    assertThat(asked.out()).isEqualTo("Wrote " + turned + ".jpg.\n");
    byte[] exported = Files.readAllBytes(home.folder().resolve(turned + ".jpg"));
    byte[] upright = jpegtran(turnedFile, "-rotate", "90");
    assertThat(pixels(exported)).isEqualTo(pixels(jpegtran(upright, "-flip", "horizontal")));
    assertThat(new String(exported, java.nio.charset.StandardCharsets.ISO_8859_1))
        .doesNotContain("Exif")
        .doesNotContain("PRIVATE");
  }

  /** The incisors lie on top, where they belong: a mirror image of that is flipped sideways. */
  @Test
  void theCroppedPictureAndItsFrameAreWhatJpegtranMakes() throws Exception {
    Asked crop = Asked.of(home, "export", cropped, "--to", "crop.jpg");
    Asked frame = Asked.of(home, "export", cropped + "-frame", "--to", "frame.jpg");
    assertThat(crop.code() + frame.code()).isZero();
    byte[] whole = jpegtran(croppedFile, "-flip", "horizontal");
    assertThat(pixels(Files.readAllBytes(home.folder().resolve("frame.jpg"))))
        .isEqualTo(pixels(whole));
    // The crop was asked for on the picture as it came: its mirror image lies 32 from the right.
    assertThat(pixels(Files.readAllBytes(home.folder().resolve("crop.jpg"))))
        .isEqualTo(pixels(jpegtran(whole, "-crop", "96x64+32+32")));
  }

  @Test
  void nothingIsOverwritten() throws IOException {
    Path taken = Files.writeString(home.folder().resolve("taken.jpg"), "somebody's file");
    Asked asked = Asked.of(home, "export", turned, "--to", "taken.jpg");
    assertThat(asked.code()).isEqualTo(3);
    assertThat(asked.out()).isEmpty();
    assertThat(asked.err())
        .isEqualTo(
            """
            vestibule: taken.jpg is already there.
              What to do: name another file with --to; nothing was overwritten.
            """);
    assertThat(taken).hasContent("somebody's file");
  }

  @Test
  void whatWaitsIsNotExported() {
    Asked asked = Asked.of(home, "export", waits);
    assertThat(asked.code()).isEqualTo(3);
    assertThat(asked.err())
        .isEqualTo(
            "vestibule: this photograph is not filed: it waits for a person.\n  What to do:"
                + " \"vestibule waiting\" says why, \"vestibule file\" files it.\n");
    assertThat(home.folder().resolve(waits + ".jpg")).doesNotExist();
  }

  private static byte[] jpegtran(byte[] jpeg, String... how) throws Exception {
    String[] all = new String[how.length + 2];
    System.arraycopy(how, 0, all, 2, how.length);
    all[0] = "-copy";
    all[1] = "none";
    return output(ExternalTool.require("jpegtran", "libjpeg-turbo-progs").run(jpeg, all));
  }

  private static byte[] pixels(byte[] jpeg) throws Exception {
    return output(ExternalTool.require("djpeg", "libjpeg-turbo-progs").run(jpeg, "-ppm"));
  }

  private static byte[] output(ExternalTool.Result result) {
    assertThat(result.exitCode()).as(result.errors()).isZero();
    return result.output();
  }
}
