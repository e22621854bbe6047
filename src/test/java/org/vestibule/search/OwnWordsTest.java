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

/** Names, numbers and treatments of the practice in a question; all persons are invented. */
class OwnWordsTest {

  @TempDir private static Path folder;

  private static Shelf shelf;

  @BeforeAll
  static void fill() throws IOException {
    shelf =
        Shelf.holding(
            folder,
            List.of(
                Photo.of("a000000001", ShownView.SMILE)
                    .patient("1001", "Ada Müller")
                    .visit("Maren Kessler", "Jonas Bauer", "A-77")
                    .texts("Phone Seven", "crown", "fracture of enamel, taken with care"),
                Photo.of("b000000002", ShownView.SMILE)
                    .patient("1002", "Bo Mueller")
                    .visit("Ada Sørensen", "Maren Kessler", "2026-0312"),
                Photo.of("c000000003", ShownView.SMILE)
                    .patient("2017", "April O'Tool-Baur")
                    .visit("Dr Jan Bauer", "Zoë Œuvrard", "16"),
                Photo.of("d000000004", ShownView.FRONTAL).teeth(16).patient("ab 12", "Muller")));
  }

  @AfterAll
  static void close() throws IOException {
    shelf.close();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "müller             | a000000001 b000000002 d000000004",
        "MÜLLER             | a000000001 b000000002 d000000004",
        "Mueller            | a000000001 b000000002 d000000004",
        "muller             | a000000001 b000000002 d000000004",
        "Mu\u0308ller       | a000000001 b000000002 d000000004",
        "ada muller         | a000000001 b000000002",
        "muller, ada        | a000000001 b000000002",
        "ada or bo          | a000000001 b000000002",
        "Sorensen           | b000000002",
        "Soerensen          | b000000002",
        "zoe oeuvrard       | c000000003",
        "o’tool             | c000000003",
        "OTool              | c000000003",
        "o'tool-baur        | c000000003",
        "tool-baur          | NONE",
        "baur               | c000000003",
        "bauer              | a000000001 c000000003",
        "kessler            | a000000001 b000000002",
        "dr kessler         | a000000001 b000000002",
        "Dr. Kessler        | a000000001 b000000002",
        "referred by kessler | a000000001",
        "referrer Kessler   | a000000001",
        "dentist kessler    | b000000002",
        "patient ada        | a000000001",
        "ada                | a000000001 b000000002",
        "patient 1001       | a000000001",
        "patient number 1001 | a000000001",
        "1001               | a000000001",
        "patient 2017       | c000000003",
        "patient \"AB 12\"  | d000000004",
        "ab 12              | d000000004",
        "a-77               | a000000001",
        "accession A-77     | a000000001",
        "2026-0312          | b000000002",
        "accession 16       | c000000003",
        "16                 | d000000004",
        "crown              | a000000001",
        "treatment crown    | a000000001",
        "note enamel        | a000000001",
        "camera seven       | a000000001",
        "patient april      | c000000003",
        "b000000002         | b000000002",
        "photos of smiles   | a000000001 b000000002 c000000003",
        "smile taken with retractor or ruler | ",
      })
  void findThePhotographs(String words, String ids) throws IOException {
    List<String> expected = ids == null ? List.of() : List.of(ids.split(" ", -1));
    if (expected.equals(List.of("NONE"))) {
      assertThat(shelf.refused(words)).contains("\"" + words + "\"");
    } else {
      assertThat(shelf.ids(words)).containsExactlyInAnyOrderElementsOf(expected);
    }
  }

  /** A whole id of a waiting or filed photograph finds it; part of one is not guessed. */
  @Test
  void aWholeHashFindsItsPhotograph() throws IOException {
    assertThat(shelf.ids(Photo.hash("b000000002"))).containsExactly("b000000002");
    assertThat(shelf.refused("b00000"))
        .isEqualTo(
            "\"b00000\" is not understood as a tooth or an area: write teeth as 16, 1.6, UR6, #3 or"
                + " \"upper right first molar\", areas as \"upper arch\" or \"upper right"
                + " quadrant\"");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2017 | \"2017\" could say when it was taken, or stand in the record: say \"in 2017\" for"
            + " the time, or \"patient 2017\"",
        "April | \"April\" could say when it was taken, or stand in the record: say \"in April\""
            + " for the time, or \"patient April\"",
        "patient 1003 | no photograph is known here by patient \"1003\": write it as it stands in"
            + " the list of visits",
        "referred by ada bo dentist who | no photograph is known here by dentist \"who\": write it as it"
            + " stands in the list of visits",
        "patient | after \"patient\" a name or number is expected: say it, or leave \"patient\""
            + " out",
        "patient, 16 | after \"patient\" a name or number is expected: say it, or leave"
            + " \"patient\" out",
        "kesler | \"kesler\" is not a word that is known here: did you mean \"kessler\"?",
      })
  void areRefusedWhereTheyAreUnknownOrAmbiguous(String words, String sentence) throws IOException {
    assertThat(shelf.refused(words)).isEqualTo(sentence);
  }

  /** The month is free for everybody who does not ask for a name. */
  @Test
  void aMonthWithAPrepositionIsNeverAName() throws IOException {
    assertThat(shelf.understood("in april")).containsExactly("2025-04-01 to 2025-04-30");
    assertThat(shelf.understood("since april")).containsExactly("since 2025-04-01");
    assertThat(shelf.understood("in 2017")).containsExactly("2017-01-01 to 2017-12-31");
  }

  /** Names of patients, treatments and notes never stand in a refusal that did not hold them. */
  @Test
  void noRefusalTellsPatientData() throws IOException {
    for (String words :
        List.of("mullr", "muelle", "crow", "enamell", "fractur", "1004", "aprl", "patient x")) {
      assertThat(shelf.refused(words).replace("\"" + words + "\"", ""))
          .as(words)
          .doesNotContainIgnoringCase("ada")
          .doesNotContainIgnoringCase("muller")
          .doesNotContainIgnoringCase("mueller")
          .doesNotContainIgnoringCase("crown")
          .doesNotContainIgnoringCase("enamel")
          .doesNotContainIgnoringCase("fracture")
          .doesNotContain("1001");
    }
  }
}
