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
import org.vestibule.dental.Notation;
import org.vestibule.store.index.IndexField;
import org.vestibule.store.index.IndexTerm;

/** Teeth in a question, in the notation of the site and in others that leave no doubt. */
class SpokenTeethTest {

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

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "16                          | upper right first molar (16)",
        "1.6                         | upper right first molar (16)",
        "UR6                         | upper right first molar (16)",
        "ur 6                        | upper right first molar (16)",
        "upper right 6               | upper right first molar (16)",
        "upper right 16              | upper right first molar (16)",
        "Upper Right First Molar     | upper right first molar (16)",
        "tooth 16                    | upper right first molar (16)",
        "#3                          | upper right first molar (16)",
        "#8                          | upper right central incisor (11)",
        "6┘                          | upper right first molar (16)",
        "16?                         | upper right first molar (16)",
        "a photo of 16               | upper right first molar (16)",
        "photographs of tooth 16     | upper right first molar (16)",
        "show me all pictures of the upper right first molar | upper right first molar (16)",
        "55                          | upper right deciduous second molar (55)",
        "upper right e               | upper right deciduous second molar (55)",
        "13-23                       | upper right canine to upper left canine (13-23, 6 teeth)",
        "13 to 23                    | upper right canine to upper left canine (13-23, 6 teeth)",
        "UR6 to UR8                  | upper right third molar to upper right first molar (18-16,"
            + " 3 teeth)",
        "16 26                       | upper right first molar (16), upper left first molar (26)",
        "16, 26                      | upper right first molar (16), upper left first molar (26)",
        "16 and 26                   | upper right first molar (16), upper left first molar (26)",
        "16 or 26                    | upper right first molar (16), upper left first molar (26)",
        "implant 36                  | implant at lower left first molar (36)",
        "36 implants                 | implant at lower left first molar (36)",
        "implant at 36               | implant at lower left first molar (36)",
        "missing 36                  | gap at lower left first molar (36)",
        "whole mouth                 | teeth of the whole mouth",
        "upper jaw                   | teeth of the upper arch",
      })
  void isReadWhereIsoIsTheDefault(String words, String understood) throws IOException {
    assertThat(shelf.understood(words)).containsExactly(understood);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "3             | upper right first molar (16)",
        "8             | upper right central incisor (11)",
        "19            | lower left first molar (36)",
        "#19           | lower left first molar (36)",
        "A             | upper right deciduous second molar (55)",
        "FDI 16        | upper right first molar (16)",
        "1.6           | upper right first molar (16)",
        "upper right 3 | upper right canine (13)",
      })
  void isReadWhereUniversalIsTheDefault(String words, String understood) throws IOException {
    assertThat(shelf.read(words, QuestionOptions.NONE, Notation.UNIVERSAL).orThrow().understood())
        .containsExactly(understood);
  }

  /** A plain tooth is looked for in five ways; an implant only where a person said so. */
  @Test
  void asksTheIndexForNamedTeethFirst() throws IOException {
    Question tooth = shelf.read("16").orThrow();
    assertThat(tooth.tiers()).hasSameSizeAs(tooth.tierWords()).hasSize(5);
    assertThat(tooth.tiers().get(0).terms()).containsExactly(new IndexTerm(IndexField.TOOTH, "16"));
    assertThat(tooth.tiers().get(1).terms())
        .containsExactly(
            new IndexTerm(IndexField.SEGMENT, "16"), new IndexTerm(IndexField.AREA, "03"));
    assertThat(tooth.tiers().get(2).terms())
        .containsExactly(
            new IndexTerm(IndexField.QUADRANT, "16"), new IndexTerm(IndexField.AREA, "10"));
    Question implant = shelf.read("implant 36").orThrow();
    assertThat(implant.tierWords()).containsExactly("named");
    assertThat(implant.tiers().get(0).terms())
        .containsExactly(new IndexTerm(IndexField.POSITION, "36 implant"));
  }

  @Test
  void anImplantIsNotEveryPictureOfItsPlace(@TempDir Path other) throws IOException {
    try (Shelf few =
        Shelf.holding(
            other,
            List.of(
                Photo.of("a", ShownView.LEFT_BUCCAL).occupant("36 implant").taken("2026-03-01"),
                Photo.of("b", ShownView.LEFT_BUCCAL).teeth(36).taken("2026-03-02"),
                Photo.of("c", ShownView.LEFT_BUCCAL).occupant("35 implant").taken("2026-03-03"),
                Photo.of("d", ShownView.LEFT_BUCCAL).occupant("36 pontic").taken("2026-03-04")))) {
      assertThat(few.ids("implant 36")).containsExactly("a");
      assertThat(few.ids("implants")).containsExactly("c", "a");
      assertThat(few.ids("36")).as("36, whatever stands there").startsWith("d", "b", "a");
      assertThat(few.ids("36 implant, 36 pontic")).containsExactly("d", "a");
      assertThat(few.ids("implant 36, tooth 35"))
          .as("35 named, whatever stands there, or an implant at 36; then 35 in frame")
          .containsExactly("c", "a", "d", "b");
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "3 mirror | \"3\" is not a tooth as ISO 3950 (FDI) writes it; it could be upper right first"
            + " molar (16) in Universal; or canine of an unnamed quadrant in Palmer (13, 23, 33,"
            + " 43): say which is meant: write #3, or UR3 (or UL, LL, LR)",
        "19 | \"19\" is not a tooth as ISO 3950 (FDI) writes it; it could be lower left first molar"
            + " (36) in Universal: say which is meant: write #19",
        "56 | \"56\" is not a tooth as ISO 3950 (FDI) writes it, nor in any other notation: check"
            + " the number, or name the tooth in words",
        "occlusal 13-43 | a range from upper right canine (13) to lower right canine (43) would"
            + " cross from one arch to the other: for the two teeth alone write \"FDI 13, 43\"; for"
            + " a range name both ends in one arch, as in FDI 13-23",
        "lower left 16 | \"lower left 16\" names no tooth: name quadrant and tooth, such as \"upper"
            + " right first molar\", \"upper right 6\" or \"upper right deciduous second molar\"",
        "upper right first molar (26) | (26) does not say the teeth before it again: leave out what"
            + " is wrong",
        "first molar | \"first\" does not say which tooth: name the quadrant too, such as \"upper"
            + " right first molar\"",
        "teeth | \"teeth\" alone says too little: ask by tooth, view, stage, date, or a name in the"
            + " record",
        "1002 | \"1002\" is no tooth, and no number of a patient or visit that is known here: write"
            + " teeth as 16, UR6 or #3, and numbers as they stand in the list of visits",
      })
  void whatIsAmbiguousOrImpossibleIsRefused(String words, String sentence) throws IOException {
    assertThat(shelf.refused(words)).isEqualTo(sentence);
  }

  /** UR9 is no tooth, and #9 is on the other side: never a view and a tooth. */
  @Test
  void aQuadrantAndANumberThatContradictAreRefusedInAnyNotation() throws IOException {
    for (String words : List.of("upper right 9", "right upper 9", "UR 9")) {
      assertThat(Shelf.sentence(shelf.read(words, QuestionOptions.NONE, Notation.UNIVERSAL)))
          .as(words)
          .contains("names no tooth");
    }
  }

  @Test
  void anArticleIsNeverToothA() throws IOException {
    assertThat(
            Shelf.sentence(shelf.read("a photo of 16", QuestionOptions.NONE, Notation.UNIVERSAL)))
        .isEqualTo(
            "\"a\" could be tooth A or a word without meaning: write #A for the tooth, or leave it"
                + " out");
    for (String words : List.of("A occlusal", "occlusal A")) {
      assertThat(shelf.refused(words))
          .as(words)
          .startsWith("\"a\" is not a tooth as ISO 3950 (FDI) writes it");
      assertThat(shelf.read(words, QuestionOptions.NONE, Notation.UNIVERSAL).orThrow().understood())
          .as(words)
          .contains("upper right deciduous second molar (55)");
    }
  }

  /** Teeth in two notations are refused wherever they stand in the question (common practice). */
  @ParameterizedTest
  @ValueSource(strings = {"16 #3", "#3 before 16", "16 or #3"})
  void twoNotationsInOneQuestionAreRefused(String words) throws IOException {
    assertThat(shelf.refused(words))
        .startsWith("notations are mixed: ")
        .contains("\"#3\" is upper right first molar (16) in Universal")
        .endsWith(": write all teeth in one notation");
  }
}
