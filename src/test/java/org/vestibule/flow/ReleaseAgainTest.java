package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.vestibule.base.Outcome;
import org.vestibule.release.Release;
import org.vestibule.release.ReleaseMaker;
import org.vestibule.store.ledger.ReleaseRow;

/** A release made again has the bytes it had, whatever program makes it, or isn't handed over. */
class ReleaseAgainTest {

  private static final ReleaseRow ROW =
      new ReleaseRow(
          "2026-001",
          "teaching",
          "spring course",
          "lecture",
          "Finch, Bo",
          "Reed, Ada",
          LocalDate.of(2026, 3, 14),
          "{}",
          "aa11",
          List.of(),
          List.of(),
          null);

  private static Outcome<Release> again(String madeBy, String manifestHash) {
    return ReleaseRules.same(ROW, madeBy, new Release(manifestHash, List.of(), List.of()));
  }

  @Test
  void theSameBytesAreHandedOverWhateverVersionMakesThem() {
    for (String version : List.of("", ReleaseMaker.VERSION, "0")) {
      assertThat(again(version, "aa11")).isInstanceOf(Outcome.Done.class);
    }
  }

  @Test
  void anotherVersionSaysSo() {
    assertThat(again("0", "bb22"))
        .isEqualTo(
            Outcome.refused(
                "the copies of release 2026-001 would not be the same as before: it was made by"
                    + " version 0 of the way copies are made, and this program has version "
                    + ReleaseMaker.VERSION,
                "make a new release, or use the program it was made with"));
  }

  @Test
  void theSameVersionBlamesTheRecordAndAnUnknownOneBoth() {
    assertThat(again(ReleaseMaker.VERSION, "bb22"))
        .isEqualTo(
            Outcome.refused(
                "the copies of release 2026-001 would not be the same as before",
                "a photograph or a setting was changed since: make a new release"));
    assertThat(again("", "bb22"))
        .isEqualTo(
            Outcome.refused(
                "the copies of release 2026-001 would not be the same as before",
                "a photograph, a setting or this program was changed since: make a new release"));
  }
}
