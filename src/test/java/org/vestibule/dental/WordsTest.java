package org.vestibule.dental;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.base.Outcome;

/**
 * Stages, accessories and nearest words: common practice, no source, codes from PS3.16 CID 4072.
 */
class WordsTest {

  @ParameterizedTest
  @CsvSource({
    "before, BEFORE",
    "Before, BEFORE",
    "pre-op, BEFORE",
    "isolated, ISOLATED",
    "rubber dam, ISOLATED",
    "prep, PREPARED",
    "during, DURING",
    "after, AFTER",
    "final, AFTER",
    "follow-up, FOLLOW_UP",
    "follow_up, FOLLOW_UP",
    "follow up, FOLLOW_UP",
    "recall, FOLLOW_UP"
  })
  void stagesAreFoundByWhatPeopleSay(String words, Stage stage) {
    assertThat(Stage.find(words)).isEqualTo(Outcome.done(stage));
  }

  @Test
  void everyStageWordIsItsOwn() {
    assertThat(Stage.allWords()).doesNotHaveDuplicates();
    for (Stage stage : Stage.values()) {
      for (String words : stage.says()) {
        assertThat(Stage.find(words)).isEqualTo(Outcome.done(stage));
      }
    }
  }

  @Test
  void unknownStagesAreRefusedWithTheNearest() {
    assertThat(Stage.find("befor"))
        .isEqualTo(Outcome.refused("\"befor\" is not a known stage", "did you mean \"before\"?"));
    assertThat(Stage.find("zzz"))
        .isEqualTo(
            Outcome.refused(
                "\"zzz\" is not a known stage",
                "say before, isolated, prepared, during, after or follow-up"));
  }

  @ParameterizedTest
  @CsvSource({
    "mirror, mirror, 1332162007",
    "double-ended retractor, retractor-double, 53535004",
    "C-shaped retractor, retractor-c, 53535004",
    "oval retractor, retractor-oval, 53535004",
    "occlusal contraster, contraster-occlusal, 1332163002",
    "anterior contraster, contraster-anterior, 1332163002",
    "cheek contraster, contraster-cheek, 1332163002",
    "tongue contraster, contraster-cheek, 1332163002",
    "ruler, ruler, 102304005",
    "perio probe, probe, 462735007",
    "tongue depressor, tongue-blade, 39802000",
    "shade tab, shade-tab,",
    "ring flash, light-ring-flash,",
    "flash, light-flash,",
    "ambient light, light-ambient,"
  })
  void accessoriesAreFoundAndCodedWhereACodeExists(String words, String key, String code) {
    Accessory accessory = AccessoryCatalogue.find(words).orThrow();
    assertThat(accessory.key()).isEqualTo(key);
    if (code == null) {
      assertThat(accessory.code()).isNull();
    } else {
      assertThat(accessory.code().value()).isEqualTo(code);
      assertThat(ContextGroup.of(4072).orElseThrow().codes()).contains(accessory.code());
    }
    assertThat(AccessoryCatalogue.byKey(key)).contains(accessory);
  }

  /** Device Description (0050,0020) is LO: 64 characters at most (PS3.5 6.2, from memory). */
  @Test
  void everyAccessorySaysItsKindAndIsFoundByEachOfItsWords() {
    for (Accessory accessory : AccessoryCatalogue.all()) {
      assertThat(accessory.description()).isNotBlank().hasSizeLessThanOrEqualTo(64);
      for (String words : accessory.words()) {
        assertThat(AccessoryCatalogue.find(words)).as(words).isEqualTo(Outcome.done(accessory));
      }
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "retractor|\"retractor\" does not say which kind: say which: Cheek retractor, double-ended;"
            + " Cheek retractor, single-ended, C-shaped; Cheek retractor, single-ended, oval",
        "contraster|\"contraster\" does not say which kind: say which: Contraster, occlusal;"
            + " Contraster, anterior; Contraster, cheek or tongue",
        "miror|\"miror\" is not a known accessory: did you mean \"mirror\"?",
      })
  void aKindMustBeSaidWhereThereAreSeveral(String words, String sentence) {
    Outcome<Accessory> found = AccessoryCatalogue.find(words);
    assertThat(((Outcome.Refused<Accessory>) found).sentence()).isEqualTo(sentence);
  }

  @Test
  void anUnknownAccessoryIsRefusedWithAllNames() {
    Outcome<Accessory> found = AccessoryCatalogue.find("xylophone");
    assertThat(((Outcome.Refused<Accessory>) found).sentence())
        .startsWith("\"xylophone\" is not a known accessory: known are: Cheek retractor")
        .contains("Shade tab");
    assertThat(AccessoryCatalogue.find(" ")).isInstanceOf(Outcome.Refused.class);
  }

  /** Distances counted by hand. */
  @ParameterizedTest
  @CsvSource({
    "buccal, buccal, 0", "bucal, buccal, 1", "bucccal, buccal, 1", "buckal, buccal, 1",
    "buccla, buccal, 1", "bcual, buccal, 2", "'', abc, 3", "kitten, sitting, 3"
  })
  void editDistanceCountsLettersAndExchanges(String a, String b, int distance) {
    assertThat(NearestWords.distance(a, b)).isEqualTo(distance);
  }

  @Test
  void onlyNearWordsAreNamedNearestFirst() {
    NearestWords words = new NearestWords(List.of("buccal", "lingual", "palatal", "bucal fold"));
    assertThat(words.to("Bucal", 3)).containsExactly("bucal fold", "buccal");
    assertThat(words.to("pal", 3)).containsExactly("palatal");
    assertThat(words.to("xyz", 3)).isEmpty();
    assertThat(words.suggestion("xyz", "try again")).isEqualTo("try again");
    assertThat(words.suggestion("buccall", "try again")).isEqualTo("did you mean \"buccal\"?");
  }
}
