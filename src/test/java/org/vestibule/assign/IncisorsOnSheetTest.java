package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.base.Turn;
import org.vestibule.dental.Incisors;

/**
 * CIPA DC-008, tag 0x0112 (from memory): for each value, at which visual edge the stored picture's
 * first row and first column lie. What a person sees at an edge of the turned picture must be found
 * at the raw edge that the table brings there.
 */
class IncisorsOnSheetTest {

  @ParameterizedTest
  @CsvSource({
    "1, TOP, LEFT", "2, TOP, RIGHT", "3, BOTTOM, RIGHT", "4, BOTTOM, LEFT",
    "5, LEFT, TOP", "6, RIGHT, TOP", "7, RIGHT, BOTTOM", "8, LEFT, BOTTOM"
  })
  void comesBackToTheRawEdge(int exif, Incisors firstRowSeenAt, Incisors firstColumnSeenAt) {
    assertThat(firstRowSeenAt.inRaw(Turn.asShown(exif))).isEqualTo(Incisors.TOP);
    assertThat(firstColumnSeenAt.inRaw(Turn.asShown(exif))).isEqualTo(Incisors.LEFT);
    assertThat(opposite(firstRowSeenAt).inRaw(Turn.asShown(exif))).isEqualTo(Incisors.BOTTOM);
    assertThat(opposite(firstColumnSeenAt).inRaw(Turn.asShown(exif))).isEqualTo(Incisors.RIGHT);
  }

  @ParameterizedTest
  @CsvSource({"TOP", "BOTTOM", "LEFT", "RIGHT"})
  void withoutExifTheSheetShowsTheRawPicture(Incisors edge) {
    assertThat(edge.inRaw(Turn.asShown(null))).isEqualTo(edge);
  }

  private static Incisors opposite(Incisors edge) {
    return switch (edge) {
      case TOP -> Incisors.BOTTOM;
      case BOTTOM -> Incisors.TOP;
      case LEFT -> Incisors.RIGHT;
      case RIGHT -> Incisors.LEFT;
    };
  }
}
