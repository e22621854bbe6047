package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Flipped bits and a lost index: told in words, and right again by the documented steps. */
class DamageTest {

  private static final int PLACES = 6;

  @TempDir private static Path folder;

  private static DamageGrid grid;

  @BeforeAll
  static void layOut() throws IOException {
    grid = new DamageGrid(folder);
  }

  @Test
  void aFlippedBitInAnObjectIsToldAndMendedFromTheBackup() throws IOException {
    for (long seed = 1; seed <= PLACES; seed++) {
      assertThat(grid.object(seed)).as("seed %d", seed).isEqualTo(DamageGrid.End.TOLD);
    }
  }

  @Test
  void aFlippedBitInTheIndexNeverChangesAnAnswer() throws IOException {
    for (long seed = 1; seed <= PLACES; seed++) {
      assertThat(grid.index(seed)).as("seed %d", seed).isNotEqualTo(DamageGrid.End.UNSEEN);
    }
  }

  @Test
  void aFlippedBitInTheLedgerIsRightAgainWithItsCopy() throws IOException {
    Set<DamageGrid.End> ends = EnumSet.noneOf(DamageGrid.End.class);
    for (long seed = 1; seed <= PLACES; seed++) {
      ends.add(grid.ledger(seed));
    }
    assertThat(ends)
        .as("seeds 1 to %d", PLACES)
        .contains(DamageGrid.End.TOLD)
        .isSubsetOf(DamageGrid.End.TOLD, DamageGrid.End.IN_UNUSED_BYTES);
  }

  /** Where no snapshot is left, a person may let work go on; nothing is mended by that. */
  @Test
  void aDamagedLedgerIsTakenAsItIsByAPersonsWordAlone() throws Exception {
    DamageGrid own = new DamageGrid(folder.resolve("as-it-is"));
    Path home = own.sound();
    assertThat(own.ask(home, "repair", "--ledger-as-it-is", "--by", "Ada", "--why", "x").err())
        .isEqualTo(
            """
            vestibule: every row of the ledger is as it was written.
              What to do: leave --ledger-as-it-is out; there is nothing to take as it is.
            """);
    try (Connection connection =
            DriverManager.getConnection("jdbc:sqlite:" + home.resolve("ledger.sqlite"));
        Statement statement = connection.createStatement()) {
      statement.execute("UPDATE visit SET zone = 'Europe/Rome' WHERE rowid = 1");
    }
    Asked told = own.ask(home, "verify");
    assertThat(told.code()).isEqualTo(4);
    assertThat(told.out())
        .contains("Row 1 of the ledger's table visit is not what was written.\n")
        .contains("bring a sound copy back with \"restore --ledger-only\", then run verify");
    Asked refused = own.ask(home, "repair");
    assertThat(refused.code()).isEqualTo(4);
    assertThat(refused.err())
        .isEqualTo(
            """
            vestibule: row 1 of the ledger's table visit is not what was written.
              What to do: restore the ledger from a snapshot: "vestibule restore --ledger-only"; sound snapshots of a backup were left as they are. If there is none, verify says what is damaged, and "repair --ledger-as-it-is" lets work go on.
            """);
    assertThat(own.ask(home, "backup", "--to", own.backup().toString()).code()).isEqualTo(4);
    assertThat(own.ask(home, "repair", "--ledger-as-it-is", "--by", "Ada").err())
        .isEqualTo(
            """
            vestibule: --ledger-as-it-is needs a reason, which the ledger keeps.
              What to do: say it in a few words: --why "no snapshot is left".
            """);
    Asked taken = own.ask(home, "repair", "--ledger-as-it-is", "--by", "Ada", "--why", "no copy");
    assertThat(taken.out())
        .startsWith(
            """
            Taken as it is now, by Ada:
              row 1 of the ledger's table visit is not what was written.
            Nothing was mended by this: what those rows say may be wrong.""");
    assertThat(own.ask(home, "verify").out())
        .as("the visit still contradicts its own history")
        .contains("1 visit is not as its history says");
  }

  @Test
  void aLostIndexIsMadeAgain() throws IOException {
    Path index = grid.sound().resolve("index");
    Asked before = grid.ask(grid.sound(), "find", "frontal");
    try (Stream<Path> all = Files.walk(index)) {
      for (Path file : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
    Asked told = grid.ask(grid.sound(), "verify");
    assertThat(told.code()).isEqualTo(1);
    assertThat(told.out())
        .contains("The index is 3 changes behind the ledger.")
        .doesNotContain("Everything is as it was kept.");
    Asked dry = grid.ask(grid.sound(), "repair", "--dry-run");
    assertThat(dry.out())
        .isEqualTo(
            """
            This is what repair would do; nothing was changed.
            The index was made again from the ledger.
            """);
    assertThat(grid.ask(grid.sound(), "verify").code()).isEqualTo(1);
    Asked repaired = grid.ask(grid.sound(), "repair");
    assertThat(repaired.code()).isZero();
    assertThat(repaired.out()).isEqualTo("The index was made again from the ledger.\n");
    assertThat(grid.ask(grid.sound(), "verify").code()).isZero();
    assertThat(grid.ask(grid.sound(), "find", "frontal")).isEqualTo(before);
    assertThat(grid.ask(grid.sound(), "repair").out()).isEqualTo("There was nothing to mend.\n");
  }
}
