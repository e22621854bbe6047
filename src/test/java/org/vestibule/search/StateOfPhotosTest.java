package org.vestibule.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.store.index.IndexAnswer;

/** What waits is found as waiting, what was rejected never. */
class StateOfPhotosTest {

  @TempDir private Path folder;

  private static Photo filed() {
    return Photo.of("aaaaaaaa01", ShownView.UPPER_OCCLUSAL)
        .teeth(16)
        .patient("1001", "Ada Mill")
        .taken("2026-03-12T10:00");
  }

  private static Photo waiting() {
    return Photo.waiting("bbbbbbbb02").taken("2026-03-12T10:01").texts("Phone Seven", "", "");
  }

  @Test
  void whatWaitsIsFoundByStateByDayAndByCameraAndIsMarked() throws IOException {
    try (Shelf shelf = Shelf.holding(folder, List.of(filed(), waiting()))) {
      for (String words : List.of("waiting", "not filed", "unfiled", "march seven")) {
        IndexAnswer found = shelf.found(words);
        assertThat(found.hits()).as(words).hasSize(1);
        assertThat(found.hits().get(0).record().id()).as(words).isEqualTo("bbbbbbbb02");
        assertThat(found.hits().get(0).record().filed()).as(words).isFalse();
      }
      assertThat(shelf.ids("2026-03-12")).containsExactly("bbbbbbbb02", "aaaaaaaa01");
    }
  }

  @Test
  void whatWaitsNeverAnswersForAToothOrAView() throws IOException {
    try (Shelf shelf = Shelf.holding(folder, List.of(filed(), waiting()))) {
      assertThat(shelf.ids("16")).containsExactly("aaaaaaaa01");
      assertThat(shelf.ids("occlusal")).containsExactly("aaaaaaaa01");
      assertThat(shelf.ids("filed")).containsExactly("aaaaaaaa01");
    }
  }

  @Test
  void onceFiledItIsFoundByWhatItShows() throws IOException {
    try (Shelf shelf = Shelf.holding(folder, List.of(filed(), waiting()))) {
      shelf.put(Photo.of("bbbbbbbb02", ShownView.RIGHT_BUCCAL).teeth(16).taken("2026-03-13"));
      assertThat(shelf.ids("waiting")).isEmpty();
      assertThat(shelf.ids("16")).containsExactly("bbbbbbbb02", "aaaaaaaa01");
    }
  }

  @Test
  void whatWasRejectedIsNeverFoundAgain() throws IOException {
    try (Shelf shelf = Shelf.holding(folder, List.of(filed(), waiting()))) {
      assertThat(shelf.ids("16")).containsExactly("aaaaaaaa01");
      shelf.reject("aaaaaaaa01");
      for (String words : List.of("16", "occlusal", "filed", "since 2000-01-01")) {
        assertThat(shelf.ids(words)).as(words).doesNotContain("aaaaaaaa01");
      }
      assertThat(shelf.refused("1001")).as("a number that only it had").contains("\"1001\"");
      assertThat(shelf.refused("mill")).as("a name that only it had").contains("\"mill\"");
    }
  }
}
