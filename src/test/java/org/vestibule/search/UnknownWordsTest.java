package org.vestibule.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.base.Outcome.Refused;

/** Words that mean nothing here are refused with the nearest that do, wherever they stand. */
class UnknownWordsTest {

  private static final String ASK_BY = "ask by tooth, view, stage, date, or a name in the record";

  @TempDir private static Path folder;

  private static Shelf shelf;

  @BeforeAll
  static void fill() throws IOException {
    shelf =
        Shelf.holding(
            folder,
            List.of(
                Photo.of("a1", ShownView.SMILE)
                    .patient("1001", "Odalys Quillfeather")
                    .visit("Maren Kessler", "", "")
                    .texts("", "of the crown", "")));
  }

  @AfterAll
  static void close() throws IOException {
    shelf.close();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "oclusal    | did you mean \"occlusal\"?",
        "ocllusal   | did you mean \"occlusal\"?",
        "retracter  | did you mean \"retracted\" or \"retractor\"?",
        "palattal   | did you mean \"palatal\"?",
        "befor      | did you mean \"before\"?",
        "miror      | did you mean \"mirror\"?",
        "implnt     | did you mean \"implant\"?",
        "yesterda   | did you mean \"yesterday\"?",
        "febuary    | did you mean \"february\"?",
        "Kesler     | did you mean \"kessler\"?",
        "frobnicate | ask by tooth, view, stage, date, or a name in the record",
        "quillfeathe | ask by tooth, view, stage, date, or a name in the record",
        "without    | ask by tooth, view, stage, date, or a name in the record",
        "not        | ask by tooth, view, stage, date, or a name in the record",
      })
  void areRefusedWithTheNearestKnownOnes(String word, String advice) throws IOException {
    String sentence = "\"" + word + "\" is not a word that is known here: " + advice;
    assertThat(shelf.refused(word)).isEqualTo(sentence);
    assertThat(shelf.refused("16 " + word + " occlusal")).isEqualTo(sentence);
    assertThat(shelf.refused("smile, " + word + ".")).isEqualTo(sentence);
    assertThat(shelf.refused(word + " since march kessler")).isEqualTo(sentence);
  }

  /** What is advised is read. */
  @ParameterizedTest
  @ValueSource(strings = {"occlusal", "retractor", "before", "february", "yesterday", "kessler"})
  void areKnownOnceTheyAreSpelledSo(String word) throws IOException {
    assertThat(shelf.understood(word)).hasSize(1);
  }

  /** A note that says "of the" does not make these words mean something. */
  @Test
  void littleWordsOfNotesAreNeverAskedFor() throws IOException {
    assertThat(shelf.understood("photos of the 16"))
        .containsExactly("upper right first molar (16)");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "\t", ",", ";", " , ; ", "\"\"", "()", "the photos of"})
  void anEmptyQuestionIsRefusedAndTheShellNamed(String words) throws IOException {
    assertThat(shelf.read(words))
        .isEqualTo(
            new Refused<Question>(
                "the question is empty",
                "say what is looked for, such as \"16 occlusal\"; put a # in quotes, because the"
                    + " shell takes a bare #3 for a comment"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"side", "arch", "intraoral", "teeth"})
  void wordsThatSayTooLittleAloneAreRefused(String word) throws IOException {
    assertThat(shelf.refused("16, " + word))
        .isEqualTo("\"" + word + "\" alone says too little: " + ASK_BY);
  }

  /** Whatever is typed ends in an answer or a refusal, never in a failure. */
  @Test
  void oddInputIsNeverAFailure() throws IOException {
    for (String words :
        List.of(
            "'",
            "\"",
            "#",
            "##",
            "-",
            "--",
            "16-",
            "-16",
            "16--17",
            "=16",
            "(16)",
            "or or",
            "\u0000",
            "\uD83D\uDE00",
            "16\u00A0occlusal",
            "x".repeat(5000),
            "16 ".repeat(400),
            "\"16",
            "(",
            ")",
            "patient \"",
            "between and",
            "since since",
            "last",
            "1/2/3/4",
            "stage",
            "view",
            "%s",
            "0000-00-00",
            "9999-12-31",
            "since 9999-12",
            "last 999 years",
            "12 march 0000")) {
      assertThat(shelf.read(words)).as(words).isNotNull();
    }
  }
}
