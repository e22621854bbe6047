package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.base.Turn;
import org.vestibule.dental.Edge;
import org.vestibule.intake.CaptureFacts;

/**
 * The edge that a person sees towards the top of the head. What the look sheet shows of a stored
 * picture follows from Exif 2.32, tag Orientation (values from memory): 1 as stored; 3 by half a
 * turn; 6 the left column at the top; 8 the right column at the top.
 */
class UpOnSheetTest {

  @Test
  void withoutExifNothingSaysWhichWayIsUp() {
    Assignment.Waits waits =
        (Assignment.Waits) photographed("a.jpg,VA,frontal,none,,", facts(null)).first();

    assertThat(waits.reasons())
        .singleElement()
        .satisfies(
            reason -> {
              assertThat(reason.kind()).isEqualTo(WaitReason.Kind.ORIENTATION);
              assertThat(reason.advice())
                  .isEqualTo(
                      "say up: top, bottom, left or right, the edge of the picture on the look"
                          + " sheet that is towards the top of the head");
            });
  }

  @ParameterizedTest
  @CsvSource({"top,NONE", "bottom,ROTATE_180", "left,ROTATE_90", "right,ROTATE_270"})
  void aPersonsWordStandsInForExif(String said, String turn) {
    assertThat(laidTurn("a.jpg,VA,frontal,none,," + said, null)).isEqualTo(turn);
  }

  @ParameterizedTest
  @CsvSource({
    // Exif, the edge as the sheet shows it, the stored edge, the turn that brings it to the top
    "1, bottom, BOTTOM, ROTATE_180",
    "3, top, BOTTOM, ROTATE_180",
    "3, bottom, TOP, NONE",
    "6, bottom, RIGHT, ROTATE_270",
    "6, left, BOTTOM, ROTATE_180",
    "8, top, RIGHT, ROTATE_270",
    "8, left, TOP, NONE"
  })
  void aPatientWhoLiesIsLaidByTheWordNotByExif(int exif, String said, Edge raw, String turn) {
    String row = "a.jpg,VA,frontal,none,," + said;

    assertThat(laidTurn(row, exif)).isEqualTo(turn);
    assertThat(decided(row, exif).decision().up()).isEqualTo(raw);
    assertThat(decided(row, exif).decision().said(exif)).containsEntry(PhotoFact.UP, said);
  }

  @Test
  void aMirrorImageIsLaidByIt() {
    Assignment.Decided decided = decided("a.jpg,VA,right buccal,as shot,,bottom", null);

    assertThat(decided.laid().turn()).isEqualTo(Turn.FLIP_VERTICAL);
  }

  @Test
  void anOcclusalViewHasNoUp() {
    Assignment.Waits waits =
        (Assignment.Waits)
            photographed("a.jpg,VA,upper occlusal,as shot,top,top", facts(1)).first();

    assertThat(waits.reasons())
        .singleElement()
        .satisfies(
            reason ->
                assertThat(reason.sentence())
                    .contains("a top edge is stated for this Upper occlusal"));
  }

  @Test
  void wordsForIt() {
    Assignment.Waits waits =
        (Assignment.Waits) photographed("a.jpg,VA,frontal,none,,sideways", facts(1)).first();

    assertThat(waits.reasons())
        .singleElement()
        .satisfies(
            reason ->
                assertThat(reason.sentence())
                    .isEqualTo("up: which edge is up is not said in words that are understood"));
  }

  private static String laidTurn(String row, @Nullable Integer exif) {
    return decided(row, exif).laid().turn().name();
  }

  private static Assignment.Decided decided(String row, @Nullable Integer exif) {
    return (Assignment.Decided) photographed(row, facts(exif)).first();
  }

  private static Practice photographed(String row, CaptureFacts facts) {
    return new Practice().list("file,visit,view,mirror,incisors,up", row).photo("a.jpg", facts);
  }

  private static CaptureFacts facts(@Nullable Integer exif) {
    return Practice.taken(Practice.IN_A).orientation(exif).build();
  }
}
