package org.vestibule.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The order of answers, worked out by hand from the rule: photographs whose named teeth include the
 * tooth first, then those of a segment, a quadrant or side, an arch, the mouth where it is usually
 * in frame; the newest first among equals, what has no date last.
 */
class RankingTest {

  @TempDir private static Path folder;

  private static Shelf shelf;

  @BeforeAll
  static void fill() throws IOException {
    shelf =
        Shelf.holding(
            folder,
            List.of(
                Photo.of("a1", ShownView.UPPER_OCCLUSAL).taken("2026-01-05T09:00"),
                Photo.of("a2", ShownView.UPPER_OCCLUSAL).taken("2026-03-12T09:00"),
                Photo.of("a3", ShownView.UPPER_OCCLUSAL).taken("2025-06-01T09:00").teeth(16),
                Photo.of("a4", ShownView.UPPER_OCCLUSAL).taken("2026-02-01T09:00").teeth(16, 17),
                Photo.of("b1", ShownView.LOWER_OCCLUSAL).taken("2026-03-12T09:05"),
                Photo.of("b2", ShownView.LOWER_OCCLUSAL).taken("2026-03-12T09:06").teeth(46),
                Photo.of("c1", ShownView.RIGHT_BUCCAL).taken("2026-03-12T09:10"),
                Photo.of("c2", ShownView.RIGHT_BUCCAL).taken("2024-03-12T09:10").teeth(16),
                Photo.of("c3", ShownView.LEFT_BUCCAL).taken("2026-03-12T09:11"),
                Photo.of("d1", ShownView.UPPER_RIGHT_QUADRANT).taken("2025-01-01T08:00"),
                Photo.of("d2", ShownView.UPPER_RIGHT_QUADRANT).taken("2026-03-13T08:00"),
                Photo.of("e1", ShownView.PALATAL_RIGHT).taken("2023-01-01T08:00"),
                Photo.of("e2", ShownView.PALATAL_RIGHT),
                Photo.of("e3", ShownView.PALATAL_RIGHT).taken("2026-03-01"),
                Photo.of("f1", ShownView.UPPER_ANTERIOR).taken("2026-03-10T10:00"),
                Photo.of("f2", ShownView.UPPER_ANTERIOR).taken("2026-03-10T11:00").teeth(11, 21),
                Photo.of("g1", ShownView.FRONTAL).taken("2026-03-12T09:20"),
                Photo.of("g2", ShownView.FRONTAL).taken("2026-03-12T09:20"),
                Photo.of("h1", ShownView.SMILE).taken("2026-03-12T09:30"),
                Photo.of("i1", ShownView.LIPS).taken("2026-03-12T09:40"),
                Photo.of("i2", ShownView.LIPS).taken("2026-03-12T09:41").areas("10"),
                Photo.waiting("w1").taken("2026-03-14T07:00")));
  }

  @AfterAll
  static void close() throws IOException {
    shelf.close();
  }

  /**
   * Named: a4 (February 2026), a3 (June 2025), c2 (2024): a named tooth outranks any newer one that
   * is not. Segment: e3 (1 March 2026, the visit's day), e1 (2023), e2 (no date). Quadrant or side:
   * d2 (13 March), i2 (12 March 9:41; a person named the quadrant), c1 (12 March 9:10), d1 (2025).
   * Arch: a2 (March), a1 (January); smile reaches 15 only. Mouth: the frontal view usually reaches
   * 15 only, so none. Left, lower and waiting: none.
   */
  @Test
  void namedThenSegmentThenSideThenArchThenTheNewest() throws IOException {
    assertThat(shelf.closeness("16"))
        .containsExactly(
            "a4: named",
            "a3: named",
            "c2: named",
            "e3: usually in frame (segment)",
            "e1: usually in frame (segment)",
            "e2: usually in frame (segment)",
            "d2: usually in frame (one side)",
            "i2: usually in frame (one side)",
            "c1: usually in frame (one side)",
            "d1: usually in frame (one side)",
            "a2: usually in frame (arch)",
            "a1: usually in frame (arch)");
  }

  /**
   * Named: f2. Segment: f1. Side: d2, i2, d1 (buccal begins at 13). Arch: h1 (9:30) before a2
   * (9:00) on one day, then a4, a1, a3 in which other teeth are named. Mouth: g1 and g2 of the same
   * minute, in the order of their ids.
   */
  @Test
  void theSameForAFrontTooth() throws IOException {
    assertThat(shelf.ids("11"))
        .containsExactly("f2", "f1", "d2", "i2", "d1", "h1", "a2", "a4", "a1", "a3", "g1", "g2");
  }

  /** Any of several teeth: b2 names 46, a3 a4 c2 name 16; the rest shows one of them. */
  @Test
  void ofSeveralTeethOneIsEnough() throws IOException {
    assertThat(shelf.ids("16 46"))
        .startsWith("b2", "a4", "a3", "c2", "e3", "e1", "e2", "d2", "i2", "c1", "d1")
        .containsExactlyInAnyOrder(
            "b2", "a4", "a3", "c2", "e3", "e1", "e2", "d2", "i2", "c1", "d1", "b1", "a2", "a1");
  }

  @Test
  void viewsAndDatesNarrowWithoutChangingTheOrder() throws IOException {
    assertThat(shelf.ids("16 occlusal")).containsExactly("a4", "a3", "d2", "d1", "a2", "a1");
    assertThat(shelf.ids("16 occlusal since february")).containsExactly("a4", "d2", "a2");
  }

  /** Without a tooth the newest comes first, whatever it shows, and what has no date last. */
  @Test
  void withoutAToothTheNewestComesFirst() throws IOException {
    assertThat(shelf.ids("palatal")).containsExactly("e3", "e1", "e2");
    assertThat(shelf.ids("since 2026-03-12"))
        .containsExactly("w1", "d2", "i2", "i1", "h1", "g1", "g2", "c3", "c1", "b2", "b1", "a2");
  }

  @Test
  void aLimitCutsTheListAndTheTotalStillCountsAll() throws IOException {
    var answer = shelf.index().search(shelf.read("16").orThrow().query(2));
    assertThat(answer.hits()).extracting(hit -> hit.record().id()).containsExactly("a4", "a3");
    assertThat(answer.total()).isEqualTo(12);
  }

  /** Lips without a named area never answer for a tooth; smiles are called lips too. */
  @Test
  void whatUsuallyShowsNoTeethIsNotFoundByATooth() throws IOException {
    assertThat(shelf.ids("11")).contains("i2").doesNotContain("i1", "w1");
    assertThat(shelf.ids("lips")).containsExactly("i2", "i1", "h1");
  }
}
