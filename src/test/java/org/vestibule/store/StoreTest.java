package org.vestibule.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.Outcome;
import org.vestibule.store.index.CaughtUp;
import org.vestibule.store.index.IndexAnswer;
import org.vestibule.store.index.IndexQuery;
import org.vestibule.store.ledger.Intent;

/** Objects, ledger, index and secret in their places, together. */
class StoreTest {

  @TempDir private Path folder;

  private static String gone(Outcome<Store> outcome) {
    return ((Outcome.Refused<Store>) outcome).reason();
  }

  private static List<String> names(Path home) throws IOException {
    try (Stream<Path> all = Files.list(home)) {
      return all.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void aStoreIsBegunInAFolderForItsOwnerAlone() throws IOException {
    Path home = folder.resolve("new").resolve("home");
    StoreFixture.open(home).orThrow().close();
    assertThat(names(home)).contains("index", "ledger.sqlite", "practice.secret");
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(home)))
        .isEqualTo("rwx------");
  }

  @Test
  void withoutItsSecretAStoreWithALedgerIsRefused() throws IOException {
    StoreFixture.open(folder).orThrow().close();
    Files.delete(folder.resolve("practice.secret"));
    assertThat(gone(StoreFixture.open(folder)))
        .isEqualTo(
            "the store has objects or a ledger, but its secret file practice.secret is gone");
    assertThat(folder.resolve("practice.secret")).doesNotExist();
  }

  @Test
  void withoutItsSecretAStoreWithObjectsIsRefused() throws IOException {
    Path objects = Files.createDirectories(folder.resolve("objects").resolve("45"));
    Files.write(objects.resolve("2.25.1.dcm"), new byte[] {1});
    assertThat(gone(StoreFixture.open(folder))).endsWith("practice.secret is gone");
    assertThat(names(folder)).containsExactly("objects");
  }

  @Test
  void anEmptyObjectsFolderIsNoStoreYet() throws IOException {
    Files.createDirectories(folder.resolve("objects"));
    StoreFixture.open(folder).orThrow().close();
    assertThat(folder.resolve("practice.secret")).exists();
  }

  @Test
  void theSamePhotographAndDecisionAreTheSameObjectAfterReopening() throws IOException {
    Intent first;
    try (Store store = StoreFixture.open(folder).orThrow()) {
      first = StoreFixture.begin(store, "a.jpg").get(0);
    }
    try (Store store = StoreFixture.open(folder).orThrow()) {
      assertThat(store.ledger().intents().unfinished()).containsExactly(first);
    }
  }

  @Test
  void reindexGivesTheSameAnswersAsBefore() throws IOException {
    try (Store store = StoreFixture.open(folder).orThrow()) {
      StoreFixture.file(store, "a.jpg");
      StoreFixture.file(store, "b.jpg");
      store
          .ledger()
          .corrections()
          .reject(StoreFixture.photo("a.jpg"), "A. Finch", "no tooth", "unsafe");
      assertThat(store.followIndex().kind()).isEqualTo(CaughtUp.Kind.APPLIED);
      IndexAnswer before = store.index().search(IndexQuery.all(9));
      assertThat(store.reindex().kind()).isEqualTo(CaughtUp.Kind.REBUILT);
      assertThat(store.index().search(IndexQuery.all(9))).isEqualTo(before);
      assertThat(before.hits()).extracting(hit -> hit.record().note()).containsExactly("b.jpg");
    }
  }
}
