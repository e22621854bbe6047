package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/** What is recorded about a photograph, in words. */
class ShowCommandTest {

  @TempDir private static Path folder;

  private static TestHome home;
  private static String cropped;
  private static String plain;

  @BeforeAll
  static void layOut() throws IOException {
    home = TestHome.in(folder);
    cropped = home.put("a.jpg", Scene.UPPER_OCCLUSAL, 5);
    plain = home.put("b.jpg", Scene.FRONTAL, 6);
    home.manifest(
        """
        file,visit,view,teeth,mirror,incisors,crop,stage,treatment
        a.jpg,V1,upper occlusal,16,as shot,top,0.2 0.25 0.8 0.75,before,onlay
        b.jpg,V1,frontal,,none,,,,
        """);
    assertThat(home.ingest().filed()).hasSize(2);
  }

  @Test
  void everyFactStandsInALineOfItsOwn() {
    Asked shown = Asked.of(home, "show", cropped);
    assertThat(shown.err()).isEmpty();
    assertThat(shown.out().lines())
        .contains(
            "Photograph            " + cropped,
            "Patient               Orla Tallgrass",
            "Patient number        P1",
            "Born                  1990-01-02",
            "Taken                 2026-03-12 09:05:00 (UTC+0100)",
            "Edges of the picture  left patient's right, right patient's left, top front, bottom back",
            "Teeth and areas       upper arch, upper right first molar (16)",
            "Mirror                was a mirror image, shown corrected",
            "Camera                Lumo P1",
            "Picture               96 x 64 samples, a part of its frame");
  }

  @Test
  void theFrameBesideACropIsShownApart() {
    assertThat(Asked.of(home, "show", cropped + "-frame").out())
        .contains("160 x 128 samples, whole frame");
    Asked none = Asked.of(home, "show", plain + "-frame");
    assertThat(none.code()).isEqualTo(3);
    assertThat(none.err())
        .isEqualTo(
            "vestibule: photograph "
                + plain
                + " is not cropped, so it has no frame apart.\n  What to do: ask for "
                + plain
                + ".\n");
  }

  @Test
  void fewerDigitsAreEnoughWhereTheyAreUnmistakable() {
    assertThat(Asked.of(home, "show", plain.substring(0, 6)).code()).isZero();
    assertThat(Asked.of(home, "show", plain.substring(0, 5)).code()).isEqualTo(3);
  }
}
