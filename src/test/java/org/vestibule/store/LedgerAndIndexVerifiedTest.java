package org.vestibule.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.store.index.IndexQuery;

/** Harm to the ledger's history, and an index that does not say what the ledger says. */
class LedgerAndIndexVerifiedTest {

  @TempDir private Path home;
  private Store store;

  @BeforeEach
  void fill() throws IOException {
    store = StoreFixture.open(home).orThrow();
    StoreFixture.file(store, "a.jpg");
    StoreFixture.file(store, "b.jpg");
  }

  @AfterEach
  void close() throws IOException {
    store.close();
  }

  private List<Finding> verify() throws IOException {
    return store.verifier().verify();
  }

  private static Finding index(String what) {
    return new Finding(Finding.Kind.INDEX, what, "run reindex");
  }

  private static Finding damage(String what) {
    return new Finding(
        Finding.Kind.DAMAGE,
        what,
        "bring a sound copy back with \"restore --ledger-only\", then run verify");
  }

  private static String brief(String name) {
    return StoreFixture.photo(name).brief();
  }

  private void asAnotherProgram(String... statements) throws SQLException {
    try (Connection connection =
            DriverManager.getConnection("jdbc:sqlite:" + home.resolve("ledger.sqlite"));
        Statement statement = connection.createStatement()) {
      for (String sql : statements) {
        statement.execute(sql);
      }
    }
  }

  @Test
  void aHistoryThatSomebodyChangedIsDamage() throws Exception {
    asAnotherProgram(
        "DROP TRIGGER change_no_update",
        "UPDATE change SET record = replace(record, '16', '26') WHERE sequence = 1");
    assertThat(verify())
        .contains(
            new Finding(
                Finding.Kind.DAMAGE,
                "change 1 of the ledger does not follow from those before",
                "somebody changed the ledger's history; restore it from its backup"))
        .contains(index("the index describes photograph " + brief("a.jpg") + " wrongly"));
  }

  @Test
  void aHistoryFromWhichARowIsGoneIsDamage() throws Exception {
    asAnotherProgram("DROP TRIGGER change_no_delete", "DELETE FROM change WHERE sequence = 1");
    assertThat(verify())
        .extracting(Finding::what)
        .contains("change 2 of the ledger does not follow from those before");
  }

  @Test
  void anObjectWhoseHashInTheLedgerIsAnotherIsDamage() throws Exception {
    asAnotherProgram(
        "DROP TRIGGER kept_no_update",
        "UPDATE kept SET file_hash = '"
            + StoreFixture.photo("x").hex()
            + "'"
            + " WHERE sop_uid IN (SELECT sop_uid FROM intent WHERE hash = '"
            + StoreFixture.photo("a.jpg").hex()
            + "')");
    String uid = store.ledger().intents().of(StoreFixture.photo("a.jpg")).get(0).sopUid();
    assertThat(verify())
        .contains(
            damage("the ledger's file is damaged: its trigger kept_no_update is gone"),
            damage(
                "among rows 1 to 2 of the ledger's table kept something is not what was written"))
        .anySatisfy(
            finding ->
                assertThat(finding.what())
                    .startsWith("object " + uid + " was kept with ")
                    .contains("hash " + brief("x") + ", and now has "));
  }

  @Test
  void anIndexBehindOrAheadSaysSoAndCatchesUp() throws IOException {
    store.ledger().changes().put(brief("c.jpg"), StoreFixture.json("c.jpg"));
    assertThat(verify()).containsExactly(index("the index is 1 changes behind the ledger"));
    store.followIndex();
    assertThat(verify()).extracting(Finding::kind).doesNotContain(Finding.Kind.DAMAGE);
    assertThat(store.index().search(IndexQuery.all(9)).total()).isEqualTo(3);
  }

  /** An index that was copied from another store, or that lost or kept a photograph. */
  @Test
  void anIndexThatSaysSomethingElseIsNamedPhotographByPhotograph() throws Exception {
    Path elsewhere = home.resolve("elsewhere");
    try (Store other = StoreFixture.open(elsewhere).orThrow()) {
      StoreFixture.file(other, "a.jpg");
      StoreFixture.file(other, "c.jpg");
    }
    store.close();
    try (Stream<Path> files = Files.list(home.resolve("index"))) {
      for (Path file : files.toList()) {
        Files.delete(file);
      }
    }
    try (Stream<Path> files = Files.list(elsewhere.resolve("index"))) {
      for (Path file : files.toList()) {
        Files.copy(file, home.resolve("index").resolve(file.getFileName()));
      }
    }
    store = StoreFixture.open(home).orThrow();
    assertThat(verify())
        .containsExactlyInAnyOrder(
            index("the index lacks photograph " + brief("b.jpg")),
            index("the index still has photograph " + brief("c.jpg")));
    store.reindex();
    assertThat(verify()).isEmpty();
  }

  /** Ledger and index are compared page by page; what was changed or removed later counts. */
  @Test
  void aLargeStoreIsComparedToItsEnd() throws IOException {
    for (int at = 0; at < 1203; at++) {
      String name = "photo " + at;
      store.ledger().changes().put(StoreFixture.photo(name).hex(), StoreFixture.json(name));
    }
    store.ledger().changes().remove(StoreFixture.photo("photo 3").hex());
    store.followIndex();
    assertThat(store.index().size()).isEqualTo(1204);
    assertThat(verify()).isEmpty();
    store.ledger().changes().remove(StoreFixture.photo("photo 1202").hex());
    store.followIndex();
    assertThat(verify()).isEmpty();
  }

  @Test
  void aDamagedIndexIsAFindingAndNotTheEndOfVerify() throws IOException {
    store.close();
    try (Stream<Path> files = Files.list(home.resolve("index"))) {
      for (Path file : files.filter(f -> f.toString().endsWith(".cfs")).toList()) {
        byte[] bytes = Files.readAllBytes(file);
        bytes[bytes.length / 2] ^= 4;
        Files.write(file, bytes);
      }
    }
    store = StoreFixture.open(home).orThrow();
    assertThat(verify()).containsExactly(index("the index is damaged"));
    store.reindex();
    assertThat(verify()).isEmpty();
  }

  @Test
  void aDamagedLedgerFileIsDamage() throws IOException {
    store.close();
    Path file = home.resolve("ledger.sqlite");
    byte[] bytes = Files.readAllBytes(file);
    // The ids of the only two photographs, wherever they stand: one digit of an index entry.
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    int at = text.indexOf(StoreFixture.photo("a.jpg").hex());
    bytes[at] = (byte) (bytes[at] == 'f' ? 'e' : 'f');
    Files.write(file, bytes);
    store = StoreFixture.open(home).orThrow();
    assertThat(verify())
        .anySatisfy(
            finding -> {
              assertThat(finding.kind()).isEqualTo(Finding.Kind.DAMAGE);
              assertThat(finding.what()).startsWith("the ledger's file is damaged: ");
              assertThat(finding.advice())
                  .isEqualTo(
                      "bring a sound copy back with \"restore --ledger-only\", then run verify");
            });
  }
}
