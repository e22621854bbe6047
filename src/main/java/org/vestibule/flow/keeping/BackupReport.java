package org.vestibule.flow.keeping;

import java.util.List;
import org.vestibule.store.Finding;

/**
 * What a backup did.
 *
 * @param snapshot name of the new snapshot
 * @param objects how many objects it knows
 * @param copied how many of them were copied now
 * @param mended how many spoilt copies were made anew
 * @param removed names of older snapshots that were removed
 * @param secretCopied true if the secret lies where it was asked for
 * @param findings objects that could not be copied
 */
public record BackupReport(
    String snapshot,
    int objects,
    int copied,
    int mended,
    List<String> removed,
    boolean secretCopied,
    List<Finding> findings) {

  public BackupReport {
    removed = List.copyOf(removed);
    findings = List.copyOf(findings);
  }
}
