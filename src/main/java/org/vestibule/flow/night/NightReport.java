package org.vestibule.flow.night;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.flow.IngestReport;
import org.vestibule.flow.delivering.DeliveryReport;
import org.vestibule.store.Finding;

/**
 * What a night did.
 *
 * @param began when
 * @param ended when
 * @param stopped why it did not begin or go on, as a sentence, and what to do; null if it did
 * @param ingest what was taken in; null if it did not come to that
 * @param waiting how many photographs wait for a person or were begun and not finished, wherever
 *     they lie
 * @param verified how many objects were read again
 * @param findings what is wrong with the store
 * @param delivery what was brought to archives; null if there is none or it did not come to that
 * @param backup what became of the backup; null if none was to be made
 * @param warnings other things a person should know, each a sentence without patient data
 * @param ending how it ended
 */
public record NightReport(
    Instant began,
    Instant ended,
    @Nullable Stopped stopped,
    @Nullable IngestReport ingest,
    int waiting,
    int verified,
    List<Finding> findings,
    @Nullable DeliveryReport delivery,
    @Nullable CopyMade backup,
    List<String> warnings,
    Ending ending) {

  /**
   * What became of a night's backup.
   *
   * @param snapshot its name; empty if it was not made
   * @param objects how many objects it knows
   * @param copied how many of them were copied now
   * @param findings objects that could not be copied
   * @param failure why it was not made, as a sentence; empty if it was
   * @param advice what to do then
   * @param damage true if it was not made because what is stored is damaged
   */
  public record CopyMade(
      String snapshot,
      int objects,
      int copied,
      List<Finding> findings,
      String failure,
      String advice,
      boolean damage) {

    public CopyMade {
      findings = List.copyOf(findings);
    }

    boolean isMade() {
      return failure.isEmpty();
    }
  }

  /** Why a night stopped, and what to do. */
  public record Stopped(String reason, String advice) {}

  /** How a night ends, from best to worst. */
  public enum Ending {
    DONE,
    NEEDS_A_PERSON,
    REFUSED,
    BUSY,
    /** The work is done, but not its backup. */
    NO_BACKUP,
    MACHINE,
    DAMAGE
  }

  public NightReport {
    findings = List.copyOf(findings);
    warnings = List.copyOf(warnings);
  }

  /** Why it stopped, if it did. */
  public Optional<Stopped> whyStopped() {
    return Optional.ofNullable(stopped);
  }

  /** What was delivered, if it came to that. */
  public Optional<DeliveryReport> delivered() {
    return Optional.ofNullable(delivery);
  }

  /** What was taken in, if it came to that. */
  public Optional<IngestReport> takenIn() {
    return Optional.ofNullable(ingest);
  }

  /** What became of the backup, if one was to be made. */
  public Optional<CopyMade> copyMade() {
    return Optional.ofNullable(backup);
  }
}
