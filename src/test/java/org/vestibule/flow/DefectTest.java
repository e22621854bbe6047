package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.assign.PersonWords;
import org.vestibule.assign.PhotoFact;
import org.vestibule.base.ContentHash;
import org.vestibule.samples.Scene;
import org.vestibule.store.Finding;
import org.vestibule.store.ledger.EventRow;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.LedgerUnusableException;
import org.vestibule.store.ledger.PhotoState;
import org.vestibule.store.steps.WriteStep;
import org.vestibule.store.steps.WriteSteps;

/** A photograph on which the program fails stops neither the others nor the next run. */
class DefectTest {

  private static final ContentHash ARCH =
      ContentHash.of(SmallPractice.photo(Scene.UPPER_OCCLUSAL, 5));
  private static final String SECRET_WORDS = "Tallgrass, Orla";

  @TempDir private Path home;

  private SmallPractice small;

  @BeforeEach
  void layOut() throws IOException {
    small = SmallPractice.layOut(home);
  }

  /** Fails once, on the first object written: the one of {@code a.jpg}. */
  private static WriteSteps poison(RuntimeException failure) {
    boolean[] failed = {false};
    return step -> {
      if (step == WriteStep.OBJECT_TEMP_CREATED && !failed[0]) {
        failed[0] = true;
        throw failure;
      }
    };
  }

  @Test
  void theOthersAreTakenInAndItWaitsWithTheReason() throws IOException {
    try (Practice practice =
        small.open(small.settings(), poison(new IndexOutOfBoundsException(SECRET_WORDS)))) {
      IngestReport report = small.ingest(practice);
      assertThat(report.filed()).extracting(FiledPhoto::name).containsExactly("b.jpg");
      assertThat(report.waiting()).extracting(WaitingPhoto::name).containsExactly("a.jpg", "c.jpg");
      WaitingPhoto.Reason reason = report.waiting().get(0).reasons().get(0);
      assertThat(reason.kind()).isEqualTo("DEFECT");
      assertThat(report.waiting().get(0).proposal()).containsEntry("teeth", "FDI 46");
      assertThat(reason.sentence())
          .isEqualTo(
              "the program failed on this photograph (IndexOutOfBoundsException), which is a defect"
                  + " in the program");
      assertThat(report.defects()).extracting(IngestReport.Defect::name).containsExactly("a.jpg");
      assertThat(report.needsPerson()).isTrue();
      assertThat(practice.store().ledger().events().of(ARCH))
          .extracting(EventRow::what, EventRow::details)
          .containsExactly(
              org.assertj.core.groups.Tuple.tuple("defect", "IndexOutOfBoundsException"));
      Intent begun = practice.store().ledger().intents().of(ARCH).get(0);
      assertThat(practice.store().ledger().intents().whyAbandoned(begun.sopUid()))
          .contains(reason.sentence());
      assertThat(new WaitingPhotos(practice).all()).hasSize(2);
      assertThat(Verify.run(practice)).noneMatch(Finding::asksForAPerson);
    }
  }

  @Test
  void theNextRunTriesItAgain() throws IOException {
    try (Practice practice =
        small.open(small.settings(), poison(new IllegalStateException(SECRET_WORDS)))) {
      small.ingest(practice);
      assertThat(small.ingest(practice).filed())
          .extracting(FiledPhoto::name)
          .containsExactly("a.jpg");
    }
  }

  @Test
  void aResumedPhotographOnWhichItFailsWaitsToo() throws IOException {
    try (Practice practice =
        small.open(small.settings(), Death.at(WriteStep.OBJECT_TEMP_CREATED, 1))) {
      assertThatThrownBy(() -> small.ingest(practice)).isInstanceOf(Death.class);
    }
    try (Practice practice =
        small.open(small.settings(), poison(new IllegalStateException(SECRET_WORDS)))) {
      IngestReport report = small.ingest(practice);
      assertThat(report.filed()).extracting(FiledPhoto::name).containsExactly("b.jpg");
      assertThat(report.waiting()).extracting(WaitingPhoto::name).containsExactly("a.jpg", "c.jpg");
      assertThat(report.waiting().get(0).proposal()).containsEntry("teeth", "FDI 46");
      assertThat(report.knownAlready()).isZero();
    }
  }

  /** The command that a person gave for one photograph ends with the defect, and leaves no trap. */
  @Test
  void aMoveOnWhichItFailsLeavesThePhotographAsItWasFiled() throws IOException {
    try (Practice practice = small.open()) {
      small.ingest(practice);
    }
    try (Practice practice =
        small.open(small.settings(), poison(new IllegalStateException(SECRET_WORDS)))) {
      String id = practice.store().ids().of(ARCH);
      PersonWords words = PersonWords.by("Ada Example").with(PhotoFact.TEETH, "36").seenByPerson();
      assertThatThrownBy(() -> new Corrections(practice).move(id, words, Why.of("wrong tooth")))
          .isInstanceOf(IllegalStateException.class);
      assertThat(practice.store().ledger().photos().find(ARCH).orElseThrow().state())
          .isEqualTo(PhotoState.KEPT);
      assertThat(small.ingest(practice).needsPerson()).isTrue();
      assertThat(Verify.run(practice)).noneMatch(Finding::asksForAPerson);
    }
  }

  @Test
  void aMachineThatFailsEndsTheRunAndTheNextOneCompletes() throws IOException {
    WriteSteps full =
        step -> {
          if (step == WriteStep.OBJECT_HALF_WRITTEN) {
            throw new IOException("No space left on device");
          }
        };
    try (Practice practice = small.open(small.settings(), full)) {
      assertThatThrownBy(() -> small.ingest(practice))
          .isInstanceOf(IOException.class)
          .hasMessage("No space left on device");
    }
    try (Practice practice = small.open()) {
      IngestReport report = small.ingest(practice);
      assertThat(report.completed()).isEqualTo(1);
      assertThat(report.defects()).isEmpty();
      assertThat(report.filed()).hasSize(2);
    }
  }

  @Test
  void aLedgerThatCanNotBeWrittenEndsTheRun() throws IOException {
    int[] commits = {0};
    WriteSteps full =
        step -> {
          if (step == WriteStep.LEDGER_COMMITTING && ++commits[0] == 5) {
            throw new IOException("No space left on device");
          }
        };
    try (Practice practice = small.open(small.settings(), full)) {
      assertThatThrownBy(() -> small.ingest(practice))
          .isInstanceOf(LedgerUnusableException.class)
          .satisfies(failure -> assertThat(Setback.isMachine(failure)).isTrue());
    }
    try (Practice practice = small.open()) {
      assertThat(small.ingest(practice).filed()).hasSize(2);
      assertThat(Verify.run(practice)).noneMatch(Finding::asksForAPerson);
    }
  }
}
