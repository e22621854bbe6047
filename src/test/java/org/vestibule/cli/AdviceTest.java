package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/** What could be better is said when a photograph is filed, kept, and found again. */
class AdviceTest {

  @TempDir private Path folder;

  /** Digital zoom above 2 (common practice, no source) and a frame below 5 million pixels. */
  @Test
  void isSaidWithItsMeasureAndFoundAgain() throws IOException {
    TestHome home = TestHome.in(folder);
    String zoomed =
        home.put(
            "zoomed.jpg",
            TestHome.photo(Scene.FRONTAL, 1).orientation(1).digitalZoom(3, 1).bytes());
    String plain = home.put("plain.jpg", Scene.FRONTAL, 2);
    home.manifest(
        "file,visit,view,mirror\nzoomed.jpg,V1,frontal,none\nplain.jpg,V1,frontal,none\n");
    Asked asked = Asked.by("nightly job", home, "ingest", "--at-once");
    assertThat(asked.out().replaceAll("\\s+", " "))
        .contains("Filed, and could be better")
        .contains("Digital zoom: zoomed.jpg (3.0x). What to do: Go nearer, or use the phone's")
        .contains("Few pixels: plain.jpg (0.0 million), zoomed.jpg (0.0 million).");
    assertThat(Asked.of(home, "find", "digital zoom").out()).contains(zoomed).doesNotContain(plain);
    assertThat(Asked.of(home, "find", "few pixels").out()).contains(zoomed).contains(plain);
    assertThat(Asked.of(home, "find", "blurred frontal").out()).doesNotContain(zoomed);
    assertThat(Asked.of(home, "verify").code()).as("the index agrees with the ledger").isZero();
  }

  @Test
  void isSaidOfAPhotographThatWaitsToo() throws IOException {
    TestHome home = TestHome.in(folder);
    home.put(
        "zoomed.jpg", TestHome.photo(Scene.FRONTAL, 1).orientation(1).digitalZoom(3, 1).bytes());
    Asked.by("nightly job", home, "ingest", "--at-once");
    Asked waiting = Asked.of(home, "waiting", "--sheet", folder.resolve("waiting.html").toString());
    assertThat(waiting.out().replaceAll("\\s+", " "))
        .contains("Could be better: digital zoom (3.0x). Go nearer, or use the phone's")
        .contains("Could be better: few pixels (0.0 million). ");
    assertThat(folder.resolve("waiting.html"))
        .content()
        .contains("Could be better: digital zoom (3.0x).");
    Files.delete(home.inbox().resolve("zoomed.jpg"));
    Asked.by("nightly job", home, "ingest", "--at-once");
    assertThat(Asked.of(home, "waiting").out().replaceAll("\\s+", " "))
        .as("it was looked at when it came in")
        .contains("Could be better: digital zoom (3.0x).");
    assertThat(Asked.of(home, "verify").code()).isZero();
  }

  /** The limit is a proposal without a source: 35 % of the series' median. */
  @Test
  void theFirstOfASeriesIsJudgedAgainWhenThereIsSomethingToCompareItWith() throws IOException {
    TestHome home = TestHome.in(folder);
    String soft = home.put("a.jpg", TestHome.photo(grain(true), 1).orientation(1).bytes());
    StringBuilder manifest = new StringBuilder("file,visit,view,mirror\na.jpg,V1,frontal,none\n");
    for (int i = 0; i < 3; i++) {
      home.manifest(manifest.toString());
      Asked.by("nightly job", home, "ingest", "--at-once");
      assertThat(Asked.of(home, "find", "blurred").out().contains(soft))
          .as("with %d others", i)
          .isEqualTo(i >= 2);
      String name = "b" + i + ".jpg";
      home.put(name, TestHome.photo(grain(false), 2 + i).orientation(1).bytes());
      manifest.append(name).append(",V1,frontal,none\n");
    }
    assertThat(Asked.of(home, "verify").code()).isZero();
    Asked.by("nightly job", home, "reject", soft, "--why", "blurred");
    home.manifest(manifest.toString());
    Asked.by("nightly job", home, "ingest", "--at-once");
    assertThat(Asked.of(home, "find", "blurred").out()).as("rejected").doesNotContain(soft);
    assertThat(Asked.of(home, "verify").code()).isZero();
  }

  /** Raters mark down 4 degrees (published, from memory). */
  @Test
  void aTiltedRowOfTeethIsSaidAndFoundAgain() throws IOException {
    TestHome home = TestHome.in(folder);
    String tilted = home.put("tilted.jpg", TestHome.photo(row(6), 1).orientation(1).bytes());
    String level = home.put("level.jpg", TestHome.photo(row(0), 2).orientation(1).bytes());
    String side = home.put("side.jpg", TestHome.photo(row(9), 3).orientation(1).bytes());
    home.manifest(
        """
        file,visit,view,mirror
        tilted.jpg,V1,frontal,none
        level.jpg,V1,frontal,none
        side.jpg,V1,right buccal,none
        """);
    Asked asked = Asked.by("nightly job", home, "ingest", "--at-once");
    assertThat(asked.out().replaceAll("\\s+", " "))
        .containsPattern(
            "Tilt: tilted\\.jpg \\((5\\.[5-9]|6\\.[0-5])\\)\\. What to do: Look at the patient");
    assertThat(Asked.of(home, "find", "tilted").out())
        .contains(tilted)
        .doesNotContain(level)
        .doesNotContain(side);
    assertThat(Asked.of(home, "show", tilted).out().replaceAll("\\s+", " "))
        .containsPattern(
            "Could be better few pixels .*; tilt \\((5\\.[5-9]|6\\.[0-5]); limit 3\\.0\\)");
    assertThat(Asked.of(home, "show", level).out()).doesNotContain("tilt (");
    assertThat(Asked.of(home, "verify").code()).isZero();
  }

  /** Eight teeth in a row, turned by so many degrees. */
  private static BufferedImage row(double degrees) {
    BufferedImage picture = new BufferedImage(440, 330, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = picture.createGraphics();
    pen.setColor(new Color(176, 92, 92));
    pen.fillRect(0, 0, 440, 330);
    pen.rotate(Math.toRadians(degrees), 220, 165);
    pen.setColor(new Color(214, 200, 172));
    for (int i = 0; i < 8; i++) {
      pen.fillRect(42 + i * 45, 130, 40, 70);
    }
    pen.dispose();
    return picture;
  }

  private static BufferedImage grain(boolean soft) {
    int width = soft ? 44 : 440;
    BufferedImage drawn = new BufferedImage(width, width, BufferedImage.TYPE_INT_RGB);
    Random random = new Random(7);
    for (int y = 0; y < width; y++) {
      for (int x = 0; x < width; x++) {
        drawn.setRGB(x, y, new Color(176, 92 + random.nextInt(40), 92).getRGB());
      }
    }
    BufferedImage picture = new BufferedImage(440, 440, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = picture.createGraphics();
    pen.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
    pen.drawImage(drawn, 0, 0, 440, 440, null);
    pen.dispose();
    return picture;
  }
}
