package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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
    assertThat(ends).as("seeds 1 to %d", PLACES).contains(DamageGrid.End.TOLD);
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
