package org.vestibule.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.Outcome.Done;
import org.vestibule.dental.Notation;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.store.index.AnyOf;
import org.vestibule.store.index.IndexTerm;

/**
 * How a question was understood is said in words that ask the same again, in any site's notation;
 * and parts that are kept apart by commas mean the same in any order.
 */
class EchoTest {

  private static final int ROUNDS = 250;

  private static final List<String> PARTS =
      List.of(
          "UR6",
          "16",
          "#3",
          "1.6",
          "upper right first molar",
          "FDI 13-23",
          "#A",
          "lower left e",
          "implant FDI 36",
          "gap at lower left 6",
          "upper right sextant",
          "whole mouth",
          "upper jaw",
          "occlusal",
          "upper",
          "retracted",
          "smiles",
          "view Smile, front",
          "palatal front",
          "before",
          "post op",
          "rubber dam",
          "recall",
          "mirror",
          "no mirror",
          "with contraster",
          "ruler",
          "waiting",
          "not filed",
          "implants",
          "since march",
          "until 2026-05",
          "in 2025 ",
          "last month",
          "between november and february",
          "yesterday",
          "ada",
          "Müller",
          "patient ada",
          "1001",
          "patient 1001",
          "patient \"AB 12\"",
          "dr kessler",
          "referred by kessler",
          "dentist bauer",
          "accession A-77",
          "crown",
          "note enamel",
          "camera seven",
          "meier-huber",
          "a000000001",
          "ada or kessler",
          "before or after",
          "smile or profile");

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
                    .texts("Phone Seven", "crown", "fracture of enamel"),
                Photo.of("b000000002", ShownView.SMILE).patient("AB 12", "Bo Meier-Huber")));
  }

  @AfterAll
  static void close() throws IOException {
    shelf.close();
  }

  /** What a question asks, whatever the order of its parts. */
  private record Meaning(Set<Set<IndexTerm>> must, List<Set<IndexTerm>> tiers, String days) {

    static Meaning of(Question question) {
      return new Meaning(
          question.must().stream().map(Meaning::terms).collect(Collectors.toSet()),
          question.tiers().stream().map(Meaning::terms).toList(),
          question.from() + " to " + question.to());
    }

    private static Set<IndexTerm> terms(AnyOf any) {
      return Set.copyOf(any.terms());
    }
  }

  private static String echo(Question question) {
    return String.join("; ", question.understood());
  }

  @Test
  void anythingUnderstoodAsksTheSameAgain() throws IOException {
    int read = 0;
    for (long seed = 1; seed <= ROUNDS; seed++) {
      Random random = new Random(seed);
      List<String> parts = new ArrayList<>(PARTS);
      Collections.shuffle(parts, random);
      String words = String.join("; ", parts.subList(0, 1 + random.nextInt(5)));
      Notation notation = random.nextBoolean() ? Notation.ISO_3950 : Notation.UNIVERSAL;
      // Days that contradict one another and teeth in two notations are refused, and so asked for
      // no second time.
      if (shelf.read(words, QuestionOptions.NONE, notation) instanceof Done<Question> done) {
        Question again = shelf.read(echo(done.value()), QuestionOptions.NONE, notation).orThrow();
        assertThat(Meaning.of(again))
            .as("seed %s: %s, understood as %s", seed, words, echo(done.value()))
            .isEqualTo(Meaning.of(done.value()));
        assertThat(shelf.read(echo(again), QuestionOptions.NONE, notation).orThrow())
            .as("seed %s: said back a second time", seed)
            .isEqualTo(again);
        read++;
      } else {
        assertThat(Shelf.sentence(shelf.read(words, QuestionOptions.NONE, notation)))
            .as("seed %s: %s", seed, words)
            .matches("(no day is both since |notations are mixed: ).*");
      }
    }
    assertThat(read).as("questions that were understood").isGreaterThan(ROUNDS / 2);
  }

  @Test
  void theOrderOfPartsChangesNothing() throws IOException {
    for (long seed = 1; seed <= ROUNDS / 2; seed++) {
      Random random = new Random(seed);
      List<String> parts =
          new ArrayList<>(
              List.of(
                  "16", "1.7", "occlusal", "mirror", "before", "ada", "kessler", "since 2026-01"));
      Collections.shuffle(parts, random);
      List<String> some = new ArrayList<>(parts.subList(0, 2 + random.nextInt(5)));
      String words = String.join(random.nextBoolean() ? ", " : " ", some);
      Collections.shuffle(some, random);
      String turned = String.join(random.nextBoolean() ? ", " : " ", some).toUpperCase(Locale.ROOT);
      assertThat(Meaning.of(shelf.read(turned).orThrow()))
          .as("seed %s: %s and %s", seed, words, turned)
          .isEqualTo(Meaning.of(shelf.read(words).orThrow()));
    }
  }

  @Test
  void sayingAPartTwiceChangesNoAnswer() throws IOException {
    for (String part : PARTS) {
      String echo = echo(shelf.read(part, QuestionOptions.NONE, Notation.UNIVERSAL).orThrow());
      Question once = shelf.read(echo).orThrow();
      Question twice = shelf.read(echo + "; " + echo).orThrow();
      assertThat(Meaning.of(twice)).as(part).isEqualTo(Meaning.of(once));
    }
  }

  @Test
  void everyViewIsSaidBackInWordsThatMeanItAlone() throws IOException {
    for (View view : ViewCatalogue.standard().all()) {
      assertThat(shelf.understood("view " + view.name())).containsExactly("view " + view.name());
    }
  }
}
