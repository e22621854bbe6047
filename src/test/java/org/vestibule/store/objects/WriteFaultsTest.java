package org.vestibule.store.objects;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.vestibule.store.objects.ObjectStoreContract.BYTES;
import static org.vestibule.store.objects.ObjectStoreContract.UID;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.vestibule.base.Outcome;
import org.vestibule.store.faults.Deed;
import org.vestibule.store.faults.Faults;
import org.vestibule.store.faults.FaultyFileSystem;
import org.vestibule.store.steps.WriteStep;
import org.vestibule.store.steps.WriteSteps;

/** Disks that fail: the object is there whole, or its name is free. */
class WriteFaultsTest {

  private final FaultyFileSystem unix =
      new FaultyFileSystem(Jimfs.newFileSystem(Configuration.unix()));
  private final FaultyFileSystem windows =
      new FaultyFileSystem(Jimfs.newFileSystem(Configuration.windows()));

  /** Windows' ERROR_SHARING_VIOLATION as Java words it (from memory). */
  private static IOException shared(Deed deed) {
    return new FileSystemException(
        "x",
        null,
        "The process cannot access the file because it is being used by another process");
  }

  private static IOException denied(Deed deed) {
    return new AccessDeniedException("x");
  }

  private static IOException noLinks(Deed deed) {
    return new FileSystemException("x", null, "Operation not permitted");
  }

  private static FolderObjectStore store(FaultyFileSystem system) {
    return new FolderObjectStore(root(system), WriteSteps.PASS);
  }

  private static Path root(FaultyFileSystem system) {
    return system.getPath(system.getSeparator().equals("/") ? "/o" : "C:\\o");
  }

  private static void assertNothingThere(FaultyFileSystem system) throws IOException {
    system.fail(Faults.NONE);
    assertThat(store(system).list()).isEmpty();
    assertThat(store(system).strays()).isEmpty();
  }

  private static void assertWhole(FaultyFileSystem system) throws IOException {
    assertThat(store(system).get(UID).orElseThrow()).isEqualTo(BYTES);
    assertThat(store(system).strays()).isEmpty();
  }

  /** Bytes before the name, the name before the folder's entry: what fsync(2) asks for. */
  @Test
  void bytesAreOnTheDiskBeforeTheNameAndTheNameBeforeItIsTold() throws IOException {
    store(unix).putIfAbsent(UID, BYTES).orThrow();
    String folder = store(unix).path(UID).orElseThrow().getParent().getFileName().toString();
    String part = UID + ".dcm-N.part";
    assertThat(unix.deeds())
        .containsSubsequence(
            "create " + part,
            "write " + part,
            "force " + part,
            "link " + UID + ".dcm",
            "force " + folder,
            "delete " + part,
            "open " + UID + ".dcm")
        .containsSubsequence("force o", "create " + part);
  }

  @Test
  void windowsHasNoFolderToForce() throws IOException {
    store(windows).putIfAbsent(UID, BYTES).orThrow();
    assertThat(windows.deeds().stream().filter(deed -> deed.startsWith("force")))
        .containsExactly("force " + UID + ".dcm-N.part");
    assertWhole(windows);
  }

  @Test
  void aDiskThatTakesAFewBytesAtATimeGetsThemAll() throws IOException {
    unix.writeAtMost(5);
    store(unix).putIfAbsent(UID, BYTES).orThrow();
    assertWhole(unix);
  }

  @Test
  void aNameRefusedOnceByASharingViolationIsTriedAgain() throws IOException {
    windows.fail(
        Faults.first(1, Deed.Kind.LINK, WriteFaultsTest::shared)
            .and(Faults.first(1, Deed.Kind.MOVE, WriteFaultsTest::shared)));
    assertThat(store(windows).putIfAbsent(UID, BYTES)).isEqualTo(Outcome.done(Put.WRITTEN));
    assertThat(windows.deeds().stream().filter(deed -> deed.startsWith("move"))).hasSize(1);
    assertWhole(windows);
  }

  /** Windows says it in its own language, and Java passes the words on. */
  @Test
  void aSharingViolationIsKnownInAnyLanguage() throws IOException {
    Faults.Failure german =
        deed ->
            new FileSystemException(
                "x",
                null,
                "Der Prozess kann nicht auf die Datei zugreifen, da sie von einem"
                    + " anderen Prozess verwendet wird");
    windows.fail(
        Faults.first(2, Deed.Kind.LINK, german).and(Faults.first(2, Deed.Kind.MOVE, german)));
    assertThat(store(windows).putIfAbsent(UID, BYTES)).isEqualTo(Outcome.done(Put.WRITTEN));
    assertWhole(windows);
  }

  /** The object is whole; what is left is what an interrupted write would leave. */
  @Test
  void aTemporaryFileThatStaysHeldDoesNotUndoTheObject() throws IOException {
    windows.fail(Faults.always(Deed.Kind.DELETE, WriteFaultsTest::denied));
    assertThat(store(windows).putIfAbsent(UID, BYTES)).isEqualTo(Outcome.done(Put.WRITTEN));
    windows.fail(Faults.NONE);
    assertThat(store(windows).get(UID).orElseThrow()).isEqualTo(BYTES);
    assertThat(store(windows).clearInterrupted()).isEqualTo(1);
    assertWhole(windows);
  }

  @Test
  void whatStaysHeldFailsAfterSixTriesAndLeavesNothing() throws IOException {
    windows.fail(
        Faults.always(Deed.Kind.LINK, WriteFaultsTest::denied)
            .and(Faults.always(Deed.Kind.MOVE, WriteFaultsTest::denied)));
    assertThatThrownBy(() -> store(windows).putIfAbsent(UID, BYTES))
        .isInstanceOf(AccessDeniedException.class);
    assertThat(windows.deeds().stream().filter(deed -> deed.startsWith("move"))).hasSize(6);
    assertNothingThere(windows);
  }

  @Test
  void anotherFailureOfTheNameIsNotTriedAgain() throws IOException {
    unix.fail(
        Faults.always(Deed.Kind.LINK, WriteFaultsTest::noLinks)
            .and(
                Faults.always(
                    Deed.Kind.MOVE,
                    deed -> new FileSystemException("x", null, "Input/output error"))));
    assertThatThrownBy(() -> store(unix).putIfAbsent(UID, BYTES))
        .isInstanceOf(FileSystemException.class)
        .hasMessageContaining("Input/output error");
    assertThat(unix.deeds().stream().filter(deed -> deed.startsWith("move"))).hasSize(1);
    assertNothingThere(unix);
  }

  /** A virus scanner may hold the temporary file after the object has its name. */
  @Test
  void aTemporaryFileHeldAfterTheNameIsTriedAgain() throws IOException {
    windows.fail(Faults.first(2, Deed.Kind.DELETE, WriteFaultsTest::shared));
    assertThat(store(windows).putIfAbsent(UID, BYTES)).isEqualTo(Outcome.done(Put.WRITTEN));
    assertWhole(windows);
  }

  @Test
  void aTemporaryFileThatStaysHeldDoesNotHideWhatWentWrong() throws IOException {
    windows.fail(
        Faults.always(Deed.Kind.DELETE, WriteFaultsTest::denied)
            .and(Faults.always(Deed.Kind.FORCE, deed -> new IOException("the disk is gone"))));
    assertThatThrownBy(() -> store(windows).putIfAbsent(UID, BYTES))
        .hasMessage("the disk is gone")
        .satisfies(e -> assertThat(e.getSuppressed()).hasSize(1));
    windows.fail(Faults.NONE);
    assertThat(store(windows).list()).isEmpty();
    assertThat(store(windows).clearInterrupted()).isEqualTo(1);
  }

  @Test
  void withoutHardLinksTheFileIsRenamedInOneStep() throws IOException {
    unix.fail(Faults.always(Deed.Kind.LINK, WriteFaultsTest::noLinks));
    assertThat(store(unix).putIfAbsent(UID, BYTES)).isEqualTo(Outcome.done(Put.WRITTEN));
    assertWhole(unix);
    assertThat(store(unix).putIfAbsent(UID, BYTES)).isEqualTo(Outcome.done(Put.ADOPTED));
  }

  @Test
  void whereNothingCanBeRenamedInOneStepItSaysSo() throws IOException {
    unix.fail(
        Faults.always(Deed.Kind.LINK, WriteFaultsTest::noLinks)
            .and(
                Faults.always(
                    Deed.Kind.MOVE, deed -> new AtomicMoveNotSupportedException("x", "y", "no"))));
    assertThatThrownBy(() -> store(unix).putIfAbsent(UID, BYTES))
        .isInstanceOf(IOException.class)
        .hasMessage("the objects folder lies where files can't be renamed in one step");
    assertNothingThere(unix);
  }

  @ParameterizedTest
  @EnumSource(
      value = Deed.Kind.class,
      names = {"CREATE", "WRITE", "FORCE"})
  void aDiskThatFailsBeforeTheNameLeavesNothing(Deed.Kind kind) throws IOException {
    unix.fail(Faults.always(kind, deed -> new IOException("the disk is gone")));
    assertThatThrownBy(() -> store(unix).putIfAbsent(UID, BYTES)).hasMessage("the disk is gone");
    assertNothingThere(unix);
    assertThat(store(unix).putIfAbsent(UID, BYTES)).isEqualTo(Outcome.done(Put.WRITTEN));
  }

  @Test
  void aFullDiskLeavesNothingAndTheNextPutIsDone() throws IOException {
    Configuration small =
        Configuration.unix().toBuilder().setBlockSize(64).setMaxSize(64 * 100L).build();
    FaultyFileSystem full = new FaultyFileSystem(Jimfs.newFileSystem(small));
    assertThatThrownBy(() -> store(full).putIfAbsent(UID, new byte[64 * 150]))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("out of disk space");
    assertNothingThere(full);
    assertThat(store(full).putIfAbsent(UID, BYTES)).isEqualTo(Outcome.done(Put.WRITTEN));
    assertWhole(full);
  }

  /** The step after the name changes the file as a lying disk would. */
  @Test
  void whatReadsBackOtherwiseLosesItsNameAndIsRefused() throws IOException {
    Path target = store(unix).path(UID).orElseThrow();
    WriteSteps lyingDisk =
        step -> {
          if (step == WriteStep.OBJECT_NAMED) {
            byte[] flipped = BYTES.clone();
            flipped[7] ^= 0x10;
            Files.write(target, flipped);
          }
        };
    assertThat(new FolderObjectStore(root(unix), lyingDisk).putIfAbsent(UID, BYTES))
        .isEqualTo(
            Outcome.refused(
                Outcome.Kind.DAMAGE,
                "an object read back from the disk is not what was written",
                "don't use this disk: check it, then run again; the photograph itself is"
                    + " untouched"));
    assertNothingThere(unix);
    assertThat(store(unix).putIfAbsent(UID, BYTES)).isEqualTo(Outcome.done(Put.WRITTEN));
  }

  /** Another process took the name between the look and the naming. */
  @Test
  void aNameTakenMeanwhileIsLeftToItsOwner() throws IOException {
    Path target = store(unix).path(UID).orElseThrow();
    WriteSteps faster =
        step -> {
          if (step == WriteStep.OBJECT_NAMING) {
            Files.write(target, BYTES);
          }
        };
    assertThat(new FolderObjectStore(root(unix), faster).putIfAbsent(UID, BYTES))
        .isEqualTo(Outcome.done(Put.ADOPTED));
    assertWhole(unix);
  }

  @Test
  void aFolderThatCannotBeListedIsADiskFailureAndNotABug() throws IOException {
    store(unix).putIfAbsent(UID, BYTES).orThrow();
    unix.fail(
        deed -> {
          if (deed.kind() == Deed.Kind.LIST && !deed.file().equals(root(unix))) {
            throw new AccessDeniedException("x");
          }
        });
    assertThatThrownBy(() -> store(unix).list()).isInstanceOf(IOException.class);
    assertThatThrownBy(() -> store(unix).strays()).isInstanceOf(IOException.class);
    assertThatThrownBy(() -> store(unix).clearInterrupted()).isInstanceOf(IOException.class);
  }
}
