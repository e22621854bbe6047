package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.intake.Roll;

/** A row's time against its photograph's: names come again (common practice, no source). */
class RowTimeTest {

  private static final LocalDateTime TAKEN = Practice.IN_A.plusSeconds(41);

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "2026-03-11T09:10:41",
        "2026-03-11T09:10:41+01:00",
        "2026-03-11 09:10",
        "11.03.2026 09:10",
        "11 Mar 2026 9:11"
      })
  void theSameTimeHoweverASpreadsheetWroteIt(String taken) {
    assertThat(photographed(taken).first()).isInstanceOf(Assignment.Decided.class);
  }

  @ParameterizedTest
  @ValueSource(strings = {"2026-03-11 09:12", "2026-03-10T09:10:41", "2025-03-11T09:10:41+01:00"})
  void anotherTimeMeansAnotherPhotograph(String taken) {
    assertThat(((Assignment.Waits) photographed(taken).first()).reasons())
        .singleElement()
        .extracting(WaitReason::line)
        .isEqualTo(
            "row 2 of the manifest is about a photograph of this name that was taken at another"
                + " time; check whether the name was used twice; correct the row, or empty its cell"
                + " \"taken\"");
  }

  @ParameterizedTest
  @ValueSource(strings = {"03/04/2026 09:10", "morning", "09:10"})
  void whatCantBeReadIsSaidAndNotCompared(String taken) {
    Practice practice = photographed(taken);

    assertThat(practice.first()).isInstanceOf(Assignment.Decided.class);
    assertThat(practice.assigner().forRoll(new Roll(List.of(), List.of())).warnings())
        .contains(
            "row 2, column taken: this is no date and time that is understood, so it was not"
                + " compared with the photograph's own");
  }

  @Test
  void aPhotographWithoutATimeIsNotCompared() {
    Practice practice =
        new Practice()
            .list("file,taken,visit,view,mirror", "a.jpg,2026-03-11 09:12,VA,frontal,none")
            .photo("a.jpg", Practice.taken(null).build());

    assertThat(practice.first()).isInstanceOf(Assignment.Decided.class);
  }

  private static Practice photographed(String taken) {
    return new Practice()
        .list("file,taken,visit,view,mirror", "a.jpg," + taken + ",VA,frontal,none")
        .photo("a.jpg", Practice.taken(TAKEN).build());
  }
}
