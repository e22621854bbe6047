package org.vestibule.flow.phone;

import java.util.List;
import org.vestibule.base.Outcome;
import org.vestibule.store.ledger.UploadRow;

/** Whether one more file may come. */
final class UploadLimits {

  private final UploadRules rules;

  UploadLimits(UploadRules rules) {
    this.rules = rules;
  }

  /**
   * The size, if the file may come.
   *
   * @param before what the page was sent so far
   * @param freeBytes where it grows
   * @param inboxFreeBytes where it is brought
   */
  Outcome<Long> allows(
      List<UploadRow> before, long sizeBytes, long freeBytes, long inboxFreeBytes) {
    if (sizeBytes < 1) {
      return Outcome.refused("the file is empty", "choose another, or take the photograph again");
    }
    if (sizeBytes > rules.largestBytes()) {
      return Outcome.refused(
          "the file has more than " + megabytes(rules.largestBytes()) + " MB",
          "bring it into the inbox by cable");
    }
    long sent = before.stream().mapToLong(UploadRow::sizeBytes).sum();
    if (before.size() >= rules.mostFiles() || sent + sizeBytes > rules.mostBytes()) {
      return Outcome.refused(
          "this page took as much as it may: "
              + rules.mostFiles()
              + " files or "
              + megabytes(rules.mostBytes())
              + " MB",
          "have another page opened for the visit");
    }
    if (Math.min(freeBytes, inboxFreeBytes) - sizeBytes < rules.keptFreeBytes()) {
      return Outcome.refused(
          "the practice's disk is nearly full",
          "leave the photographs on the phone, and tell whoever looks after Vestibule");
    }
    return Outcome.done(sizeBytes);
  }

  private static long megabytes(long bytes) {
    return bytes / 1_000_000;
  }
}
