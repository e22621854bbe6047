package org.vestibule.base;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The eight turns against pictures of six letters that are turned by hand. */
class TurnTest {

  /** Rows of the picture ABC/DEF as each Exif value asks for it; CIPA DC-008 from memory. */
  @ParameterizedTest
  @CsvSource({
    "1, ABC/DEF", "2, CBA/FED", "3, FED/CBA", "4, DEF/ABC",
    "5, AD/BE/CF", "6, DA/EB/FC", "7, FC/EB/DA", "8, CF/BE/AD"
  })
  void showsAPictureUprightAsExifAsks(int orientation, String rows) {
    assertThat(turned("ABC/DEF", Turn.ofExif(orientation))).isEqualTo(rows);
  }

  @ParameterizedTest
  @CsvSource({"2, true", "4, true", "5, true", "7, true", "1, false", "3, false", "6, false"})
  void exifValuesTwoFourFiveAndSevenReflect(int orientation, boolean reflects) {
    assertThat(Turn.ofExif(orientation).reflects()).isEqualTo(reflects);
  }

  @ParameterizedTest
  @EnumSource(Turn.class)
  void oneTurnAfterAnotherIsOneTurn(Turn first) {
    for (Turn second : Turn.values()) {
      assertThat(turned("ABC/DEF", first.then(second)))
          .as("%s then %s", first, second)
          .isEqualTo(turned(turned("ABC/DEF", first), second));
    }
  }

  @ParameterizedTest
  @EnumSource(Turn.class)
  void theInverseRestoresThePicture(Turn turn) {
    assertThat(turned(turned("ABC/DEF", turn), turn.inverse())).isEqualTo("ABC/DEF");
  }

  @Test
  void refusesOrientationsThatExifDoesNotHave() {
    assertThatThrownBy(() -> Turn.ofExif(9))
        .hasMessage("Exif Orientation must be 1 to 8 but was 9");
  }

  private static String turned(String picture, Turn turn) {
    String[] rows = picture.split("/");
    if (turn.swapsAxes()) {
      String[] columns = new String[rows[0].length()];
      Arrays.fill(columns, "");
      for (String row : rows) {
        for (int i = 0; i < columns.length; i++) {
          columns[i] += row.charAt(i);
        }
      }
      rows = columns;
    }
    if (turn.flipsHorizontally()) {
      rows =
          Arrays.stream(rows)
              .map(r -> new StringBuilder(r).reverse().toString())
              .toArray(String[]::new);
    }
    if (turn.flipsVertically()) {
      for (int i = 0; i < rows.length / 2; i++) {
        String row = rows[i];
        rows[i] = rows[rows.length - 1 - i];
        rows[rows.length - 1 - i] = row;
      }
    }
    return String.join("/", rows);
  }
}
