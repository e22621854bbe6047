package org.vestibule.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.store.index.IndexRecord;

/** Random questions, answered by the index and by going through all photographs one by one. */
class RankingModelTest {

  private static final int PHOTOGRAPHS = 120;
  private static final int QUESTIONS = 3000;

  /** Every so many questions are put in words; reading them costs more than answering. */
  private static final int IN_WORDS = 10;

  @TempDir private Path folder;

  @Test
  void theIndexAnswersAsGoingThroughAllWould() throws IOException {
    for (long seed = 1; seed <= 2; seed++) {
      Random random = new Random(seed);
      List<Photo> photos = new ArrayList<>();
      for (int at = 0; at < PHOTOGRAPHS; at++) {
        photos.add(photo(at, random));
      }
      try (Shelf shelf = Shelf.holding(folder.resolve("seed" + seed), photos)) {
        int answered = 0;
        for (int at = 0; at < QUESTIONS / 2; at++) {
          RandomAsk ask = RandomAsk.of(random);
          List<String> expected = model(ask, photos);
          assertThat(at % IN_WORDS == 0 ? shelf.ids(ask.text()) : shelf.ids(ask.question()))
              .as("seed %s, question %s: %s", seed, at, ask.text())
              .isEqualTo(expected);
          answered += expected.isEmpty() ? 0 : 1;
        }
        assertThat(answered).as("questions with an answer").isGreaterThan(QUESTIONS / 8);
      }
    }
  }

  /** The closest first, then the newest, without a date last, then by hash. */
  private static List<String> model(RandomAsk ask, List<Photo> photos) {
    Comparator<IndexRecord> closest = Comparator.comparingInt(ask::closeness);
    return photos.stream()
        .map(Photo::record)
        .filter(record -> ask.closeness(record) >= 0)
        .sorted(
            closest
                .thenComparing(RankingModelTest::time, Comparator.reverseOrder())
                .thenComparing(IndexRecord::hash))
        .map(IndexRecord::id)
        .toList();
  }

  private static LocalDateTime time(IndexRecord record) {
    LocalDate day = record.day();
    LocalDateTime taken = record.takenAt();
    return taken != null ? taken : day != null ? day.atStartOfDay() : LocalDateTime.MIN;
  }

  private static Photo photo(int at, Random random) {
    String id = String.format(Locale.ROOT, "p%03d", at);
    Photo photo =
        random.nextInt(8) == 0
            ? Photo.waiting(id)
            : Photo.of(id, RandomAsk.pick(List.of(ShownView.values()), random))
                .mirror(RandomAsk.pick(List.of("none", "as-shot", "corrected"), random))
                .stage(
                    RandomAsk.pick(List.of("", "before", "prepared", "after", "follow-up"), random))
                .patient("100" + random.nextInt(5), name(random))
                .visit(random.nextBoolean() ? "" : name(random), "", "");
    if (photo.record().filed() && random.nextInt(3) > 0) {
      photo = photo.teeth(RandomAsk.pick(RandomAsk.TEETH, random));
    }
    String day = LocalDate.of(2025, 9, 1).plusDays(random.nextInt(190)).toString();
    return switch (random.nextInt(6)) {
      case 0 -> photo;
      case 1 -> photo.taken(day);
      default -> photo.taken(day + "T1" + random.nextInt(3) + ":00");
    };
  }

  private static String name(Random random) {
    return RandomAsk.pick(List.of("Ada Mill", "Bo Mill", "Ada Meier-Huber", "Bo Huber"), random);
  }
}
