package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.samples.Scene;
import org.vestibule.store.Finding;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.steps.WriteStep;

/** An object that can't be written where it belongs: nothing is lost, and a later run files it. */
class UnwritableObjectTest {

  @TempDir Path folder;

  private TestHome home;
  private String first;
  private String second;
  private Path place;

  /** A run that ends at its first object; now it is known where that object has to lie. */
  @BeforeEach
  void anInterruptedRun() throws IOException {
    home = TestHome.in(folder);
    first = home.put("a.jpg", Scene.FRONTAL, 1);
    second = home.put("b.jpg", Scene.FRONTAL, 2);
    home.manifest(
        """
        file,visit,view,mirror
        a.jpg,V1,frontal,none
        b.jpg,V1,frontal,none
        """);
    try (Practice practice = home.open(UnwritableObjectTest::fullDisk)) {
      assertThatThrownBy(() -> home.ingest(practice)).isInstanceOf(FileSystemException.class);
    }
    try (Practice practice = home.open()) {
      List<Intent> begun = practice.store().ledger().intents().unfinished();
      assertThat(begun).hasSize(1);
      place = practice.store().objects().path(begun.get(0).sopUid()).orElseThrow();
      assertThat(practice.store().objects().strays()).as("no part is left").isEmpty();
    }
  }

  private static void fullDisk(WriteStep step) throws IOException {
    if (step == WriteStep.OBJECT_HALF_WRITTEN) {
      throw new FileSystemException("object", null, "No space left on device");
    }
  }

  @Test
  void theNextRunCompletesItUnderTheSameUid() throws IOException {
    IngestReport report = home.ingest();
    assertThat(report.completed()).isEqualTo(1);
    assertThat(report.filed()).extracting(FiledPhoto::id).containsExactly(first, second);
    assertThat(place).exists();
    sound(2);
  }

  @Test
  void aPersonCanFileWhatAnInterruptedRunWasFiling() throws IOException {
    try (Practice practice = home.open()) {
      new Corrections(practice).file(first, ByPerson.says("Ada", "mirror", "none")).orThrow();
    }
    assertThat(home.ingest().filed()).extracting(FiledPhoto::id).containsExactly(second);
    sound(2);
  }

  @Test
  void anotherFileInItsPlaceIsLeftAndThePhotographGetsANewIdentity() throws IOException {
    Files.createDirectories(place.getParent());
    Files.writeString(place, "not the object");
    IngestReport report = home.ingest();
    assertThat(report.filed()).extracting(FiledPhoto::id).containsExactly(first, second);
    assertThat(report.filed().get(0).remarks())
        .contains(
            "under a new identity, since another file already had the name of its object, and was"
                + " left as it is");
    assertThat(place).hasContent("not the object");
    try (Practice practice = home.open()) {
      assertThat(Verify.run(practice))
          .extracting(Finding::kind)
          .containsExactly(Finding.Kind.GIVEN_UP);
      new KeptPhoto(practice).object(first).orThrow();
    }
    Files.delete(place);
    sound(2);
  }

  @Test
  void aFileWhereItsFolderShouldBeStopsTheRun() throws IOException {
    Files.deleteIfExists(place.getParent());
    Files.writeString(place.getParent(), "in the way");
    try (Practice practice = home.open()) {
      assertThatThrownBy(() -> home.ingest(practice))
          .isInstanceOf(FileAlreadyExistsException.class);
    }
    Files.delete(place.getParent());
    home.ingest();
    sound(2);
  }

  private void sound(int objects) throws IOException {
    try (Practice practice = home.open()) {
      assertThat(practice.store().objects().list()).hasSize(objects);
      assertThat(practice.store().ledger().kept().all()).hasSize(objects);
      assertThat(Verify.run(practice)).isEmpty();
    }
  }
}
