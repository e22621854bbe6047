package org.vestibule.dental;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.base.Turn;

/** Patient Orientation, PS3.3 C.7.6.1.1.1: direction of image right, direction of image down. */
class PatientOrientationTest {

  @Test
  void turnsActAsTheyMoveSamples() {
    for (char right : "LRAPHF".toCharArray()) {
      for (char down : "LRAPHF".toCharArray()) {
        if (right == down || right == VectorOracle.opposite(down)) {
          continue;
        }
        VectorOracle.Raw raw = new VectorOracle.Raw(right, down);
        PatientOrientation orientation = new PatientOrientation("" + right, "" + down);
        for (Turn turn : Turn.values()) {
          VectorOracle.Raw seen = VectorOracle.turned(raw, turn);
          assertThat(orientation.after(turn).text())
              .as("%s after %s", orientation.text(), turn)
              .isEqualTo(seen.right() + "\\" + seen.down());
          for (Turn next : Turn.values()) {
            assertThat(orientation.after(turn).after(next))
                .isEqualTo(orientation.after(turn.then(next)));
          }
        }
        assertThat(orientation.looking().letter()).isEqualTo(VectorOracle.cross(right, down));
      }
    }
  }

  /** True-handed and mirrored orientations of both arches, worked out by hand. */
  @ParameterizedTest
  @CsvSource({
    "L\\P, true",
    "A\\L, true",
    "R\\A, true",
    "P\\R, true",
    "L\\A, false",
    "A\\R, false",
    "R\\P, false",
    "P\\L, false"
  })
  void mirroredOcclusalPicturesOfOneArchAreTrueOnesOfTheOther(String text, boolean trueUpper) {
    PatientOrientation orientation = PatientOrientation.parse(text).orElseThrow();
    assertThat(orientation.handednessFits(Direction.HEAD)).isEqualTo(trueUpper);
    assertThat(orientation.handednessFits(Direction.FEET)).isEqualTo(!trueUpper);
  }

  @Test
  void marginWordsFollowFromTheOrientation() {
    assertThat(new PatientOrientation("L", "P").edges())
        .isEqualTo(
            new PatientOrientation.Edges("patient's right", "patient's left", "front", "back"));
    assertThat(new PatientOrientation("R", "P").edges())
        .isEqualTo(
            new PatientOrientation.Edges("patient's left", "patient's right", "front", "back"));
    assertThat(new PatientOrientation("A", "F").edges())
        .isEqualTo(new PatientOrientation.Edges("back", "front", "up", "down"));
  }

  @Test
  void joinedLettersTurnTogether() {
    assertThat(new PatientOrientation("LA", "F").after(Turn.FLIP_HORIZONTAL))
        .isEqualTo(new PatientOrientation("RP", "F"));
    assertThat(PatientOrientation.parse("L/F")).contains(new PatientOrientation("L", "F"));
  }

  @ParameterizedTest
  @CsvSource({"L\\R", "L\\L", "X\\F", "L", "L\\F\\P", "LR\\F", "''\\F", "l\\f"})
  void whatIsNoOrientationIsNotRead(String text) {
    assertThat(PatientOrientation.parse(text.replace("'", ""))).isEmpty();
  }

  @Test
  void rowAndColumnMustRunAlongDifferentAxes() {
    assertThatThrownBy(() -> new PatientOrientation("L", "R"))
        .hasMessage("row and column must run along different axes but were L and R");
    assertThatThrownBy(() -> new PatientOrientation("LL", "F"))
        .hasMessage(
            "a direction must be one to three of A P R L H F, one for each axis, but was \"LL\"");
  }
}
