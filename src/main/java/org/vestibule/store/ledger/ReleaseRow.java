package org.vestibule.store.ledger;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Copies that were made for one purpose.
 *
 * @param recipient for whom
 * @param why the words of who asked for them
 * @param askedBy who asked
 * @param who made them
 * @param madeOn the day, on the practice's clock, that stands in the copies
 * @param request JSON text by which the same copies can be made again
 * @param manifestHash of the manifest, which holds the hash of every other file
 * @param withdrawn by whom and why; null if it holds
 */
public record ReleaseRow(
    String id,
    String purpose,
    String recipient,
    String why,
    String askedBy,
    String who,
    LocalDate madeOn,
    String request,
    String manifestHash,
    List<Item> items,
    List<Said> said,
    @Nullable Withdrawn withdrawn) {

  public ReleaseRow {
    items = List.copyOf(items);
    said = List.copyOf(said);
  }

  /**
   * One photograph's copy.
   *
   * @param sopUid of the object that was copied
   * @param hash of the photograph, 64 hexadecimal digits
   * @param pseudonym what stands for the patient; empty if the patient is named
   * @param copyUid of the copy
   * @param name of its files, without folder and ending
   */
  public record Item(
      String sopUid,
      String hash,
      String issuer,
      String patientId,
      String pseudonym,
      String copyUid,
      String name) {}

  /** What a person said about a picture. */
  public record Said(String sopUid, String option, String person, LocalDate on) {}

  /** Who took the release back, and why. */
  public record Withdrawn(String who, String why) {}
}
