package org.vestibule.flow.night;

import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.vestibule.flow.NightRules;
import org.vestibule.flow.Practice;
import org.vestibule.flow.night.NightReport.Stopped;
import org.vestibule.store.ledger.EventRow;

/** What must hold before a night begins: room on the disks, a clock that can be right. */
final class UpFront {

  private static final Duration CLOCK_SLACK = Duration.ofMinutes(10);
  private static final Duration LONGEST_SILENCE = Duration.ofDays(400);
  private static final int MEGABYTE_BITS = 20;

  private final Practice practice;
  private final NightRules rules;

  UpFront(Practice practice, NightRules rules) {
    this.practice = practice;
    this.rules = rules;
  }

  /** Why the night must not begin; empty if it may. */
  Optional<Stopped> problem() throws IOException {
    Optional<Stopped> clock = clock();
    return clock.isPresent() ? clock : room();
  }

  /** Bytes that are free where objects are kept. */
  long freeBytes() throws IOException {
    return Files.getFileStore(existing(practice.settings().objects())).getUsableSpace();
  }

  private Optional<Stopped> clock() {
    List<EventRow> latest = practice.store().ledger().events().latest(1);
    if (latest.isEmpty()) {
      return Optional.empty();
    }
    Instant last = latest.get(0).at();
    Instant now = practice.clock().instant();
    if (now.isBefore(last.minus(CLOCK_SLACK))) {
      return Optional.of(
          new Stopped(
              "the computer's clock says " + now + ", but the ledger was written at " + last,
              "set the computer's clock; nothing was taken in"));
    }
    return now.isAfter(last.plus(LONGEST_SILENCE))
        ? Optional.of(
            new Stopped(
                "the computer's clock says "
                    + now
                    + ", more than a year after the ledger's last"
                    + " entry at "
                    + last,
                "check the computer's clock; if it is right, run ingest by hand once"))
        : Optional.empty();
  }

  private Optional<Stopped> room() throws IOException {
    for (Path place : List.of(practice.home(), practice.settings().objects())) {
      FileStore disk = Files.getFileStore(existing(place));
      if (disk.getUsableSpace() < rules.freeBytes()) {
        return Optional.of(
            new Stopped(
                "the disk with "
                    + place.getFileName()
                    + " has "
                    + (disk.getUsableSpace() >> MEGABYTE_BITS)
                    + " MB free, and "
                    + (rules.freeBytes() >> MEGABYTE_BITS)
                    + " MB are wanted before anything is begun",
                "free some space; the photographs stay where they are until the next night"));
      }
    }
    return Optional.empty();
  }

  private static Path existing(Path place) {
    Path at = place.toAbsolutePath();
    while (!Files.exists(at) && at.getParent() != null) {
      at = at.getParent();
    }
    return at;
  }
}
