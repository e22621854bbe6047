package org.vestibule.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.vestibule.samples.RawState.Axes;

/**
 * The geometry of the samples against the derivations written down beside each row: image right
 * cross image down is the direction the viewer looks in.
 */
class RawStateTest {

  @ParameterizedTest
  @EnumSource(
      value = Scene.class,
      mode = EnumSource.Mode.EXCLUDE,
      names = {"MUG"})
  void everySceneIsDrawnInTrueHand(Scene scene) {
    char expected =
        switch (scene.words()) {
          case "upper occlusal" -> 'H';
          case "lower occlusal" -> 'F';
          case "single-tooth occlusal" -> scene == Scene.TOOTH_16 ? 'H' : 'F';
          case "right buccal" -> 'L';
          case "left buccal" -> 'R';
          case "palatal front" -> 'A';
          default -> 'P';
        };
    assertThat(scene.shownAs().looking()).isEqualTo(expected);
  }

  /** The four true-handed and four mirrored ways to see the upper arch (derived). */
  @ParameterizedTest
  @CsvSource({"L\\P,H", "A\\L,H", "R\\A,H", "P\\R,H", "L\\A,F", "A\\R,F", "R\\P,F", "P\\L,F"})
  void theVectorProductTellsTheHand(String axes, char looking) {
    assertThat(Axes.of(axes).looking()).isEqualTo(looking);
  }

  /** One mirror is one reflection: the mirrored state looks the opposite way, whatever the turn. */
  @ParameterizedTest
  @CsvSource({"L\\P,L\\A", "L\\A,L\\P", "L\\P,R\\P", "L\\A,R\\A", "A\\F,P\\F", "P\\F,A\\F"})
  void aMirrorTurnsTheHand(String shown, String raw) {
    char looking = Axes.of(shown).looking();
    assertThat(Axes.of(raw).looking()).isEqualTo(RawState.opposite(looking));
  }

  @Test
  void aPictureLaidDownAgainKeepsItsPatient() {
    BufferedImage picture = new BufferedImage(3, 2, BufferedImage.TYPE_INT_RGB);
    picture.setRGB(2, 0, 0xff0000); // the patient's left front: image right is L, image up is A
    BufferedImage raw = RawState.lay(picture, Axes.of("L\\P"), Axes.of("A\\R"));
    // Now image right is A and image up is L, so the left front lies at the upper right.
    assertThat(raw.getWidth()).isEqualTo(2);
    assertThat(raw.getHeight()).isEqualTo(3);
    assertThat(raw.getRGB(1, 0) & 0xffffff).isEqualTo(0xff0000);
  }

  @Test
  void whatAViewerSeesIsWhatWasMeant() {
    for (int orientation = 1; orientation <= 8; orientation++) {
      Axes seen = Axes.of("P\\F");
      assertThat(RawState.rawFor(seen, orientation).shownBy(orientation)).isEqualTo(seen);
    }
    // A phone held upright stores rows that run down the face: right is F, down is R.
    assertThat(RawState.rawFor(Axes.of("L\\F"), 6)).isEqualTo(Axes.of("F\\R"));
  }
}
