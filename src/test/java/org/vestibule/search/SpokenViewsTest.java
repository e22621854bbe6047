package org.vestibule.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.store.index.IndexField;
import org.vestibule.store.index.IndexTerm;

/** Views, stages, mirror and accessories in a question, as practices call them. */
class SpokenViewsTest {

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

  private static List<String> values(String words, IndexField field) throws IOException {
    return shelf.read(words).orThrow().must().stream()
        .flatMap(any -> any.terms().stream())
        .filter(term -> term.field() == field)
        .map(IndexTerm::value)
        .toList();
  }

  /** Views by their keys, picked from the catalogue by hand (common practice, no source). */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "palatal               | palatal-right palatal-left palatal-front",
        "lingual               | lingual-right lingual-left lingual-front",
        "palatal front         | palatal-front",
        "retracted             | frontal frontal-apart right-buccal left-buccal",
        "RETRACTED             | frontal frontal-apart right-buccal left-buccal",
        "smile                 | smile smile-right smile-left face-smile lips",
        "smiles                | smile smile-right smile-left face-smile lips",
        "profile               | profile-right profile-left",
        "profiles              | profile-right profile-left",
        "face smiling          | face-smile",
        "portrait at rest      | face-rest",
        "smile from the right  | smile-right",
        "upper full arch       | upper-occlusal",
        "maxillary occlusal right quadrant | upper-right-occlusal",
        "3/4 left              | face-three-quarter-left",
        "view upper occlusal   | upper-occlusal",
        "view Smile, front     | smile",
        "smile or profile      | smile smile-right smile-left face-smile lips profile-right"
            + " profile-left",
        "smile profile         | smile smile-right smile-left face-smile lips profile-right"
            + " profile-left",
        "view right buccal; view left buccal | right-buccal left-buccal",
      })
  void viewsAreKnownByTheirWords(String words, String keys) throws IOException {
    List<String> expected = Arrays.asList(keys.split(" ", -1));
    List<String> found = values(words, IndexField.VIEW);
    if (expected.contains("lips")) {
      found = found.stream().filter(key -> !key.equals("lips")).toList();
      expected = expected.stream().filter(key -> !key.equals("lips")).toList();
    }
    assertThat(found).containsExactlyInAnyOrderElementsOf(expected);
  }

  /** Every view of the catalogue is found by its name, and by no other view's. */
  @Test
  void everyViewIsKnownByItsWholeName() throws IOException {
    for (View view : ViewCatalogue.standard().all()) {
      assertThat(values("view " + view.name(), IndexField.VIEW))
          .as(view.name())
          .containsExactly(view.key());
      for (String phrase : view.words()) {
        assertThat(values(phrase, IndexField.VIEW)).as(phrase).contains(view.key());
      }
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "before        | before",
        "Pre-Op        | before",
        "pre op        | before",
        "preop         | before",
        "baseline      | before",
        "rubber dam    | isolated",
        "prep          | prepared",
        "stage during  | during",
        "post op       | after",
        "final         | after",
        "follow up     | follow-up",
        "follow-ups    | follow-up",
        "recall        | follow-up",
        "before after  | before after",
        "before and after | before after",
        "before or after  | before after",
        "before/after  | before after",
        "before 16 after recall | before after follow-up",
      })
  void stagesAreKnownByTheirWordsAndSeveralAreAlternatives(String words, String stages)
      throws IOException {
    assertThat(values(words, IndexField.STAGE)).containsExactly(stages.split(" ", -1));
    assertThat(shelf.read(words).orThrow().must()).hasSize(1);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "mirror            | MIRROR    | as-shot corrected",
        "direct            | MIRROR    | none",
        "no mirror         | MIRROR    | none",
        "without mirror    | MIRROR    | none",
        "mirror or direct  | MIRROR    | as-shot corrected none",
        "filed             | STATE     | filed",
        "waiting           | STATE     | waiting",
        "not filed         | STATE     | waiting",
        "unfiled           | STATE     | waiting",
        "implants          | OCCUPANT  | implant",
        "missing           | OCCUPANT  | gap",
        "with contraster   | ACCESSORY | contraster-occlusal contraster-anterior"
            + " contraster-cheek",
        "retractors        | ACCESSORY | retractor-double retractor-c retractor-oval",
        "with ruler        | ACCESSORY | ruler",
        "shade tab         | ACCESSORY | shade-tab",
      })
  void fixedWordsMeanOneThing(String words, IndexField field, String values) throws IOException {
    assertThat(values(words, field)).containsExactly(values.split(" ", -1));
    assertThat(shelf.read(words).orThrow().must()).hasSize(1);
  }

  /** Two views that one photograph can't both be are alternatives; others narrow each other. */
  @Test
  void viewsThatAgreeNarrow() throws IOException {
    Question read = shelf.read("occlusal 16 upper").orThrow();
    assertThat(read.must()).hasSize(2);
    assertThat(read.must().get(0).terms())
        .contains(new IndexTerm(IndexField.VIEW, "lower-occlusal"));
    assertThat(read.must().get(1).terms())
        .doesNotContain(new IndexTerm(IndexField.VIEW, "lower-occlusal"));
  }

  /** A photograph can show an implant and a pontic, a ruler and a retractor. */
  @Test
  void whatOnePhotographCanShowIsAskedForTogether() throws IOException {
    assertThat(shelf.read("implant pontic ruler retractor").orThrow().must()).hasSize(4);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "16 or mirror | \"or\" joins two different kinds of things, the second being mirror: ask two"
            + " questions, or leave it out",
        "before or 16 | \"or\" joins two different kinds of things, the second being upper right"
            + " first molar (16): ask two questions, or leave it out",
        "before or march | \"or\" joins two different kinds of things, the second being days: ask"
            + " two questions, or leave it out",
        "or 16 | \"or\" stands here without two teeth, views, stages or names on both sides: ask"
            + " two questions, or leave it out",
        "16 or | nothing stands after \"or\": say what else may be meant",
      })
  void orThatJoinsNothingIsRefused(String words, String sentence) throws IOException {
    assertThat(shelf.refused(words)).isEqualTo(sentence);
  }
}
