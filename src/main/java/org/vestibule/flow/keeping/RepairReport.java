package org.vestibule.flow.keeping;

import java.util.List;
import org.vestibule.store.Finding;

/**
 * What was mended, or would be, and what is left for a person.
 *
 * @param leftovers how many leftovers of interrupted writes were removed
 * @param broughtBack objects that came from another folder, by their UIDs
 * @param reindexed true if the index was made again
 * @param entered photographs that were entered again from their objects, in words
 * @param orphans objects that the ledger does not know
 * @param findings what is still wrong, besides the orphans
 */
public record RepairReport(
    int leftovers,
    List<String> broughtBack,
    boolean reindexed,
    List<String> entered,
    List<Orphan> orphans,
    List<Finding> findings) {

  public RepairReport {
    broughtBack = List.copyOf(broughtBack);
    entered = List.copyOf(entered);
    orphans = List.copyOf(orphans);
    findings = List.copyOf(findings);
  }
}
