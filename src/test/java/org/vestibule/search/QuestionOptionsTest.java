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
import org.vestibule.base.Outcome;
import org.vestibule.dental.Notation;

/** What is asked for by options, alone and with words; all persons are invented. */
class QuestionOptionsTest {

  @TempDir private static Path folder;

  private static Shelf shelf;

  @BeforeAll
  static void fill() throws IOException {
    shelf =
        Shelf.holding(
            folder,
            List.of(
                Photo.of("a1", ShownView.UPPER_OCCLUSAL)
                    .teeth(16)
                    .patient("0101", "Ada Müller")
                    .visit("Maren Kessler", "Jonas Bauer", "A1")
                    .taken("2026-03-12T10:00")
                    .stage("before")
                    .texts("", "crown", "chipped edge"),
                Photo.of("a2", ShownView.RIGHT_BUCCAL)
                    .teeth(16)
                    .patient("0102", "Bo Kessler")
                    .visit("Mia Meier-Huber", "Jonas Bauer", "A2")
                    .taken("2026-02-01T10:00")
                    .stage("after"),
                Photo.waiting("w1").taken("2026-03-13T10:00")));
  }

  @AfterAll
  static void close() throws IOException {
    shelf.close();
  }

  /** Options as name=value, parted by semicolons. */
  private static QuestionOptions options(String given) {
    String[] value = new String[9];
    List<String> names =
        List.of("patient", "tooth", "view", "from", "to", "stage", "referrer", "text", "state");
    for (String each : given.split(";", -1)) {
      String[] named = each.split("=", 2);
      if (named.length == 2) {
        value[names.indexOf(named[0].strip())] = named[1];
      }
    }
    return new QuestionOptions(
        value[0], value[1], value[2], value[3], value[4], value[5], value[6], value[7], value[8]);
  }

  private static Outcome<Question> read(String words, String given) throws IOException {
    return shelf.read(words == null ? "" : words, options(given), Notation.ISO_3950);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "patient=0101            |                | a1    | patient number \"0101\"",
        "patient= 0101           |                | a1    | patient number \"0101\"",
        "patient=101             |                |       | patient number \"101\"",
        "tooth=16                |                | a1 a2 | upper right first molar (16)",
        "tooth=UR6               |                | a1 a2 | upper right first molar (16)",
        "tooth=implant 16        |                |       | implant at upper right first molar (16)",
        "view=upper occlusal     |                | a1    | view Upper occlusal",
        "view=right lateral      |                | a2    | view Right buccal",
        "from=2026-03-01         |                | w1 a1 | since 2026-03-01",
        "from=2026-03-12         |                | w1 a1 | since 2026-03-12",
        "to=2026-02-01           |                | a2    | until 2026-02-01",
        "from=2026-02-01;to=2026-03-12 |          | a1 a2 | 2026-02-01 to 2026-03-12",
        "from=2024-02-29;to=2024-02-29 |          |       | 2024-02-29",
        "stage=before            |                | a1    | stage before",
        "stage=POSTOP            |                | a2    | stage after",
        "referrer=kessler        |                | a1    | referred by \"kessler\"",
        "referrer=Meier-Huber    |                | a2    | referred by \"meier\"; referred by"
            + " \"huber\"",
        "text=Crown              |                | a1    | treatment or note \"crown\"",
        "text=crown edge         |                | a1    | treatment or note \"crown\"; treatment"
            + " or note \"edge\"",
        "state=filed             |                | a1 a2 | filed",
        "state=waiting           |                | w1    | not filed",
        "state=Not filed         |                | w1    | not filed",
        "patient=0101            | 16             | a1    | upper right first molar (16); patient"
            + " number \"0101\"",
        "patient=0102            | upper occlusal |       | patient number \"0102\"; any of 6 views"
            + " called \"upper occlusal\"",
        "from=2026-01-01         | until february | a2    | 2026-01-01 to 2026-02-28",
        "from=2026-01-01         | march          | w1 a1 | 2026-03-01 to 2026-03-31",
        "stage=before            | before         | a1    | stage before; stage before",
        "view=upper occlusal     | upper          | a1    | view Upper occlusal; any of 13 views"
            + " called \"upper\"",
        "tooth=16                | 46             | a1 a2 | upper right first molar (16), lower"
            + " right first molar (46)",
        "referrer=kessler        | kessler        | a1    | referred by \"kessler\"; \"kessler\" in"
            + " a name, treatment or note",
      })
  void narrowWhatIsFound(String given, String words, String ids, String understood)
      throws IOException {
    Question question = read(words, given).orThrow();
    assertThat(String.join("; ", question.understood())).isEqualTo(understood);
    assertThat(
            shelf.index().search(question.query(10)).hits().stream()
                .map(hit -> hit.record().id())
                .toList())
        .isEqualTo(ids == null ? List.of() : List.of(ids.split(" ", -1)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "from=12.03.2026 | | \"12.03.2026\" is not a day of the calendar as written here: write it"
            + " as 2026-03-12",
        "from=2026-03-01;to=2026-02-30 | | \"2026-02-30\" is not a day of the calendar as written"
            + " here: write it as 2026-03-12",
        "to=march | | \"march\" is not a day of the calendar as written here: write it as"
            + " 2026-03-12",
        "from=2026-03-02;to=2026-03-01 | | no day is both since 2026-03-02 and until 2026-03-01:"
            + " say one span of days, with its years, such as 2025-11 to 2026-02",
        "to=2026-02-28 | since march | no day is both since 2026-03-01 and until 2026-02-28: say"
            + " one span of days, with its years, such as 2025-11 to 2026-02",
        "tooth=19 | | \"19\" is not a tooth as ISO 3950 (FDI) writes it; it could be lower left"
            + " first molar (36) in Universal: say which is meant: write #19",
        "tooth=16 #3 | | \"16 #3\" REASON",
        "tooth= | | no tooth is named: write teeth as 16, UR6 or #3, or leave them out",
        "view=palatal | | \"palatal\" could mean several views: say which: Palatal, right side;"
            + " Palatal, left side; Palatal, front teeth",
        "view=oclusal | | \"oclusal\" is not a word for a view: did you mean \"occlusal\"?",
        "stage=befor | | \"befor\" is not a known stage: did you mean \"before\"?",
        "stage=x | | \"x\" is not a known stage: say before, isolated, prepared, during, after or"
            + " follow-up",
        "state=lost | | \"lost\" is not a state: say filed or waiting",
        "referrer=-- | | the words for \"referred by\" hold no letter and no digit: say at least one"
            + " word",
        "text= | | the words for \"treatment or note\" hold no letter and no digit: say at least one"
            + " word",
        "stage=before | after | no photograph is both stage before and stage after: keep the option"
            + " or the word",
        "view=upper occlusal | smile | no photograph is both view Upper occlusal and any of 4 views"
            + " called \"smile\": keep the option or the word",
        "state=waiting | filed | no photograph is both not filed and filed: keep the option or the"
            + " word",
        " | | the question is empty: say what is looked for, such as \"16 occlusal\"; put a # in"
            + " quotes, because the shell takes a bare #3 for a comment",
      })
  void areRefusedInWords(String given, String words, String sentence) throws IOException {
    String refused = Shelf.sentence(read(words, given == null ? "" : given));
    if (sentence.endsWith("REASON")) {
      assertThat(refused)
          .isEqualTo(
              "notations are mixed: \"16\" is upper right first molar (16) in ISO 3950 (FDI), but"
                  + " \"#3\" is upper right first molar (16) in Universal: write all teeth in one"
                  + " notation");
    } else {
      assertThat(refused).isEqualTo(sentence);
    }
  }

  /** A blank patient number would find what belongs to nobody: it is refused. */
  @Test
  void aBlankPatientNumberIsRefused() throws IOException {
    assertThat(Shelf.sentence(read("", "patient= ")))
        .isEqualTo("the patient number is blank: say it, or leave the option out");
  }
}
