package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/** A person marks a grey card, and the colours are judged by it. */
class GreyCardCommandTest {

  @TempDir private Path folder;
  private TestHome home;
  private String photo;

  /** Two cards: a yellowish one on the left, sRGB 124, 118, 100, and a grey one on the right. */
  @BeforeEach
  void layOut() throws IOException {
    home = TestHome.in(folder);
    BufferedImage picture = new BufferedImage(440, 330, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = picture.createGraphics();
    pen.setColor(new Color(176, 92, 92));
    pen.fillRect(0, 0, 440, 330);
    pen.setColor(new Color(124, 118, 100));
    pen.fillRect(40, 240, 120, 80);
    pen.setColor(new Color(118, 118, 118));
    pen.fillRect(280, 240, 120, 80);
    pen.dispose();
    photo = home.put("a.jpg", TestHome.photo(picture, 1).orientation(1).digitalZoom(3, 1).bytes());
    home.manifest("file,visit,view,mirror\na.jpg,V1,frontal,none\n");
    Asked.by("nightly job", home, "ingest", "--at-once");
  }

  /**
   * Expected from outside: sRGB 124, 118, 100 is L* 49.5, a* -0.2, b* 10.7 (CIE 15, sRGB, D65);
   * against a grey as light CIEDE2000 is 8.5 to 9.5, by the formula that ColourTest checks.
   */
  @Test
  void aCastIsSaidKeptAndFoundAgain() throws IOException {
    Asked asked = Asked.by("Dr. Ada Example", home, "grey-card", photo, "--at", "0.22,0.85");
    assertThat(asked.code()).isZero();
    assertThat(asked.out().replaceAll("\\s+", " "))
        .matches(
            "The grey card looks yellow: [89]\\.\\d \\(CIEDE2000\\) from grey, more than 1\\.8\\. Compare"
                + " no shades by this photograph; set the phone's white balance by the card\\. ");
    assertThat(Asked.of(home, "find", "colour cast").out()).contains(photo);
    assertThat(Asked.of(home, "find", "digital zoom").out()).as("the rest stays").contains(photo);
    assertThat(Asked.of(home, "show", photo, "--history").out())
        .containsPattern(
            "Dr\\. Ada Example  marked the grey card: [89]\\.\\d \\(CIEDE2000\\) from grey");
    assertThat(Asked.of(home, "verify").code()).as("the index agrees with the ledger").isZero();
  }

  @Test
  void aGreyCardIsSaidToBeGreyAndTheCastIsTakenBack() throws IOException {
    Asked.by("Dr. Ada Example", home, "grey-card", photo, "--at", "0.22,0.85");
    Asked asked = Asked.by("Dr. Ada Example", home, "grey-card", photo, "--at", "0.77,0.85");
    assertThat(asked.code()).isZero();
    assertThat(asked.out())
        .matches(
            "The grey card is 0\\.\\d \\(CIEDE2000\\) from grey, not more than 1\\.8: no colour"
                + " cast\\.\n");
    assertThat(Asked.of(home, "find", "colour cast").out()).doesNotContain(photo);
    assertThat(Asked.of(home, "find", "digital zoom").out()).contains(photo);
    assertThat(Asked.of(home, "verify").code()).isZero();
  }

  @Test
  void aCorrectionKeepsWhatWasFound() throws IOException {
    Asked.by("Dr. Ada Example", home, "grey-card", photo, "--at", "0.22,0.85");
    move("frontal teeth apart");
    assertThat(Asked.of(home, "find", "colour cast").out()).contains(photo);
    Files.delete(home.inbox().resolve("a.jpg"));
    move("frontal");
    assertThat(Asked.of(home, "find", "colour cast").out()).as("from the frame").contains(photo);
    assertThat(Asked.of(home, "find", "digital zoom").out()).contains(photo);
    assertThat(Asked.of(home, "verify").code()).isZero();
  }

  private void move(String view) throws IOException {
    Asked moved =
        Asked.by("Dr. Ada Example", home, "move", photo, "--view", view, "--why", "wrong view");
    assertThat(moved.code()).as(moved.err()).isZero();
  }

  @Test
  void whatIsNoCardOrNoSpotIsRefused() throws IOException {
    Asked edge = Asked.by("Dr. Ada Example", home, "grey-card", photo, "--at", "0.36,0.85");
    assertThat(edge.code()).isEqualTo(ExitCode.REFUSED.number());
    assertThat(edge.err())
        .isEqualTo(
            """
            vestibule: what is marked is not an even grey card.
              What to do: mark the card alone, away from its edges and from reflections.
            """);
    for (String at : new String[] {"50,50", "0.5", "0.5,1.1", "-0.1,0.5", "a,b"}) {
      Asked wrong = Asked.by("Dr. Ada Example", home, "grey-card", photo, "--at", at);
      assertThat(wrong.code()).as(at).isEqualTo(ExitCode.WRONG_USE.number());
      assertThat(wrong.err())
          .contains("--at says \"" + at + "\", and two numbers from 0 to 1 were expected.\n")
          .contains("write for example --at 0.5,0.9 for a card below the middle of the picture.");
    }
    assertThat(Asked.of(home, "show", photo, "--history").out()).doesNotContain("grey card");
  }

  @Test
  void whatWaitsHasNoPictureYet() throws IOException {
    String waits = home.put("b.jpg", Scene.FRONTAL, 5);
    Asked.by("nightly job", home, "ingest", "--at-once");
    Asked asked = Asked.by("Dr. Ada Example", home, "grey-card", waits, "--at", "0.5,0.5");
    assertThat(asked.code()).isEqualTo(ExitCode.REFUSED.number());
    assertThat(asked.err()).contains("is not filed");
  }
}
