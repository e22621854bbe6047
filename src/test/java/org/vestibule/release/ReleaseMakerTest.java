package org.vestibule.release;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.vestibule.base.Outcome;
import org.vestibule.check.SamplePhotograph;
import org.vestibule.dental.Teeth;
import org.vestibule.words.Language;

/** What a release leaves behind when it can't be finished: nothing. */
class ReleaseMakerTest {

  private static Order order(int pictures) {
    Original original =
        new Original(
            "2.25.314159265358979",
            "a".repeat(64),
            "EXAMPLE",
            "P-0001",
            "Änne Müster",
            LocalDate.of(2026, 3, 5),
            "upper occlusal",
            Teeth.NONE,
            null,
            () -> Outcome.done(SamplePhotograph.file(SamplePhotograph.data())));
    return new Order(
        "2026-001",
        Purposes.find("teaching").orThrow(),
        "spring course",
        "",
        LocalDate.of(2026, 3, 14),
        Set.of(Format.DICOM, Format.JPEG),
        "Orla Tallgrass",
        new Pseudonyms(new byte[32]),
        new ArrayList<>(Collections.nCopies(pictures, original)),
        new Secrets(Set.of("Müster", "P-0001", "Beispiel"), Set.of(LocalDate.of(2026, 3, 5))),
        null,
        Language.ENGLISH);
  }

  private static List<String> left(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.skip(1).map(Path::toString).toList();
    }
  }

  @Test
  void aFullDiskLeavesNothing() throws IOException {
    Configuration small =
        Configuration.unix().toBuilder().setMaxSize(64 * 1024L).setBlockSize(1024).build();
    try (FileSystem disk = Jimfs.newFileSystem(small)) {
      Path folder = Files.createDirectory(disk.getPath("/out"));
      for (String target : List.of("copies", "copies.zip")) {
        assertThatThrownBy(
                () ->
                    ReleaseMaker.make(
                        order(20), folder.resolve(target), Outcome::done, release -> {}))
            .isInstanceOf(IOException.class);
        assertThat(left(folder)).isEmpty();
      }
    }
  }

  @Test
  void aRecordThatFailsLeavesNothing() throws IOException {
    try (FileSystem disk = Jimfs.newFileSystem(Configuration.unix())) {
      Path folder = Files.createDirectory(disk.getPath("/out"));
      assertThatThrownBy(
              () ->
                  ReleaseMaker.make(
                      order(1),
                      folder.resolve("copies"),
                      Outcome::done,
                      release -> {
                        throw new IllegalStateException("the ledger is gone");
                      }))
          .hasMessage("the ledger is gone");
      assertThat(left(folder)).isEmpty();
    }
  }

  @Test
  void itIsMadeWholeAndTheSameEachTime() throws IOException {
    try (FileSystem disk = Jimfs.newFileSystem(Configuration.unix())) {
      Path folder = Files.createDirectory(disk.getPath("/out"));
      Path one = folder.resolve("one.zip");
      Path two = folder.resolve("two.zip");
      ReleaseMaker.make(order(2), one, Outcome::done, release -> {}).orThrow();
      ReleaseMaker.make(order(2), two, Outcome::done, release -> {}).orThrow();
      assertThat(Files.readAllBytes(one)).isEqualTo(Files.readAllBytes(two));
      assertThat(left(folder)).containsExactlyInAnyOrder("/out/one.zip", "/out/two.zip");
    }
  }

  @Test
  void moreThanFitTheSheetAreRefused() throws IOException {
    try (FileSystem disk = Jimfs.newFileSystem(Configuration.unix())) {
      Path target = disk.getPath("/work/copies");
      assertThat(ReleaseMaker.make(order(43), target, Outcome::done, release -> {}))
          .isEqualTo(
              Outcome.refused(
                  "43 photographs don't fit the one-page sheet, which holds 42",
                  "make several releases"));
      assertThat(
              ReleaseMaker.make(
                  order(1), disk.getPath("/work/none/copies"), Outcome::done, release -> {}))
          .isEqualTo(Outcome.refused("there is no folder none for the copies", "make it first"));
    }
  }
}
