package org.vestibule.forward;

import java.util.List;
import java.util.Map;

/**
 * An archive's report on a storage commitment (PS3.4 J.3.3).
 *
 * @param transactionUid of the request
 * @param committed SOP Instance UIDs for which it takes responsibility
 * @param failed SOP Instance UIDs for which it does not, each with its failure reason (PS3.3
 *     C.14.1.1), or -1 if it gave none
 */
public record CommitmentReport(
    String transactionUid, List<String> committed, Map<String, Integer> failed) {

  public CommitmentReport {
    committed = List.copyOf(committed);
    failed = Map.copyOf(failed);
  }
}
