package org.vestibule.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.dental.Notation;

/** Days in a question, as seen from a day that is passed in. */
class SpokenDatesTest {

  @TempDir private static Path folder;

  private static Shelf shelf;

  @BeforeAll
  static void fill() throws IOException {
    shelf = new Shelf(folder);
  }

  @AfterAll
  static void close() throws IOException {
    shelf.close();
  }

  private static Question on(String today, String words) throws IOException {
    return shelf
        .read(words, QuestionOptions.NONE, Notation.ISO_3950, LocalDate.parse(today))
        .orThrow();
  }

  /** Days counted by hand on a calendar; 14 March 2026 is a Saturday. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        "2026-03-14 | 2026-03-12                  | 2026-03-12 | 2026-03-12",
        "2026-03-14 | on 2026-03-12               | 2026-03-12 | 2026-03-12",
        "2026-03-14 | 2026-02                     | 2026-02-01 | 2026-02-28",
        "2026-03-14 | 2024-02                     | 2024-02-01 | 2024-02-29",
        "2026-03-14 | 2025                        | 2025-01-01 | 2025-12-31",
        "2026-03-14 | march                       | 2026-03-01 | 2026-03-31",
        "2026-03-14 | in March                    | 2026-03-01 | 2026-03-31",
        "2026-03-14 | since march                 | 2026-03-01 | -",
        "2026-03-14 | from march                  | 2026-03-01 | -",
        "2026-03-14 | until february              | -          | 2026-02-28",
        "2026-03-14 | april                       | 2025-04-01 | 2025-04-30",
        "2026-03-14 | since december              | 2025-12-01 | -",
        "2026-03-14 | sept 2025                   | 2025-09-01 | 2025-09-30",
        "2026-03-14 | march 2025                  | 2025-03-01 | 2025-03-31",
        "2026-03-14 | since march 2025            | 2025-03-01 | -",
        "2026-03-14 | 12 march 2026               | 2026-03-12 | 2026-03-12",
        "2026-03-14 | march 12 2026               | 2026-03-12 | 2026-03-12",
        "2026-03-14 | 29 february 2024            | 2024-02-29 | 2024-02-29",
        "2026-03-14 | today                       | 2026-03-14 | 2026-03-14",
        "2026-03-14 | yesterday                   | 2026-03-13 | 2026-03-13",
        "2026-03-01 | yesterday                   | 2026-02-28 | 2026-02-28",
        "2024-03-01 | yesterday                   | 2024-02-29 | 2024-02-29",
        "2026-01-01 | yesterday                   | 2025-12-31 | 2025-12-31",
        "2026-03-14 | monday                      | 2026-03-09 | 2026-03-09",
        "2026-03-14 | since saturday              | 2026-03-14 | -",
        "2026-03-14 | this week                   | 2026-03-09 | 2026-03-14",
        "2026-03-14 | last week                   | 2026-03-02 | 2026-03-14",
        "2026-03-16 | last week                   | 2026-03-09 | 2026-03-16",
        "2026-03-14 | this month                  | 2026-03-01 | 2026-03-14",
        "2026-03-14 | last month                  | 2026-02-01 | 2026-02-28",
        "2026-01-31 | last month                  | 2025-12-01 | 2025-12-31",
        "2024-03-31 | last month                  | 2024-02-01 | 2024-02-29",
        "2026-03-14 | this year                   | 2026-01-01 | 2026-03-14",
        "2026-03-14 | last year                   | 2025-01-01 | 2025-12-31",
        "2024-02-29 | last year                   | 2023-01-01 | 2023-12-31",
        "2026-03-14 | last 3 months               | 2025-12-14 | 2026-03-14",
        "2026-03-31 | last 1 months               | 2026-02-28 | 2026-03-31",
        "2026-03-14 | past 10 days                | 2026-03-04 | 2026-03-14",
        "2026-03-14 | between january and march   | 2026-01-01 | 2026-03-31",
        "2026-02-10 | between january and march   | 2026-01-01 | 2026-03-31",
        "2026-02-10 | between november and january | 2025-11-01 | 2026-01-31",
        "2024-01-15 | between december and february | 2023-12-01 | 2024-02-29",
        "2026-03-14 | from january to march       | 2026-01-01 | 2026-03-31",
        "2026-03-14 | january to march            | 2026-01-01 | 2026-03-31",
        "2026-03-14 | since january until february | 2026-01-01 | 2026-02-28",
        "2026-03-14 | 2025-11-02 to 2026-02-01    | 2025-11-02 | 2026-02-01",
        "2026-03-14 | since 2026-01-01 2026-01    | 2026-01-01 | 2026-01-31",
      })
  void meanTheseDays(String today, String words, LocalDate from, LocalDate to) throws IOException {
    Question read = on(today, words);
    assertThat(read.from()).isEqualTo(from);
    assertThat(read.to()).isEqualTo(to);
    assertThat(read.must()).isEmpty();
    assertThat(read.tiers()).isEmpty();
  }

  @Test
  void areSaidBackAsDays() throws IOException {
    assertThat(on("2026-03-14", "since march").understood()).containsExactly("since 2026-03-01");
    assertThat(on("2026-03-14", "until march").understood()).containsExactly("until 2026-03-31");
    assertThat(on("2026-03-14", "today").understood()).containsExactly("2026-03-14");
    assertThat(on("2026-03-14", "last month").understood())
        .containsExactly("2026-02-01 to 2026-02-28");
  }

  /** Several statements about days hold together; none is lost. */
  @Test
  void holdTogether() throws IOException {
    Question read = on("2026-03-14", "since january mirror until 2026-02 since 2026-01-10");
    assertThat(read.understood()).containsExactly("mirror", "2026-01-10 to 2026-02-28");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "february march | no day is both since 2026-03-01 and until 2026-02-28: say one span of"
            + " days, with its years, such as 2025-11 to 2026-02",
        "since 2026-05-01 until 2026-04 | no day is both since 2026-05-01 and until 2026-04-30: say"
            + " one span of days, with its years, such as 2025-11 to 2026-02",
        "16 march | \"16 march\" could be a day, or tooth 16 in march: write the day as 2026-03-12;"
            + " for the tooth say \"16 in march\"",
        "mirror march 3 | \"march 3\" could be a day, or tooth 3 in march: write the day as"
            + " 2026-03-12; for the tooth say \"3 in march\"",
        "since january 16 | \"january 16\" could be a day, or tooth 16 in january: write the day as"
            + " 2026-03-12; for the tooth say \"16 in january\"",
        "16 before march | \"before march\" could be the stage, or say when it was taken: for the"
            + " stage say \"before, march\"; for days say since or until",
        "after last week | \"after last week\" could be the stage, or say when it was taken: for"
            + " the stage say \"after, last week\"; for days say since or until",
        "2026-02-30 | \"2026-02-30\" is not a day of the calendar as written here: write days as"
            + " 2026-03-12, months as 2026-03 or march 2026",
        "2025-02-29 | \"2025-02-29\" is not a day of the calendar as written here: write days as"
            + " 2026-03-12, months as 2026-03 or march 2026",
        "29 february 2025 | \"29 february 2025\" is not a day of the calendar as written here:"
            + " write days as 2026-03-12, months as 2026-03 or march 2026",
        "2026-13 | \"2026-13\" is not a day of the calendar as written here: write days as"
            + " 2026-03-12, months as 2026-03 or march 2026",
        "12.03.2026 | \"12.03.2026\" is not a day of the calendar as written here: write days as"
            + " 2026-03-12, months as 2026-03 or march 2026",
        "3/12/2026 | \"3/12/2026\" is not a day of the calendar as written here: write days as"
            + " 2026-03-12, months as 2026-03 or march 2026",
        "since mrach | after \"since\" a day is expected, but \"mrach\" is none: did you mean"
            + " \"march\"?",
        "16 until | after \"until\" a day is expected: write days as 2026-03-12, months as 2026-03"
            + " or march 2026",
        "between march | \"between\" needs two days with \"and\" between them: say between march"
            + " and may",
      })
  void areRefusedWhereTheyCanNotBeMeant(String words, String sentence) throws IOException {
    assertThat(shelf.refused(words)).isEqualTo(sentence);
  }

  /** The name of a view may hold "from", but does not take it away from the days after it. */
  @Test
  void areNotTakenIntoTheNameOfAView() throws IOException {
    assertThat(shelf.understood("smile from the right from march"))
        .containsExactly("view Smile from the right", "since 2026-03-01");
    assertThat(shelf.understood("profile from march"))
        .containsExactly("any of 2 views called \"profile\"", "since 2026-03-01");
  }

  /** The words that are advised do ask for a tooth and a month, or a stage and a month. */
  @Test
  void theAdvisedWordsAreRead() throws IOException {
    for (String words : List.of("16 in march", "16, march", "march, 16")) {
      assertThat(shelf.understood(words))
          .containsExactly("upper right first molar (16)", "2026-03-01 to 2026-03-31");
    }
    assertThat(shelf.understood("before, march"))
        .containsExactly("stage before", "2026-03-01 to 2026-03-31");
  }
}
