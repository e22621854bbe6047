package org.vestibule.dicom.net;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.DataSetReader;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.TransferSyntax;

/**
 * What an archive says of the objects it was asked to keep (PS3.4 J.3.3).
 *
 * @param transactionUid of the request that this answers
 * @param kept objects that it has taken responsibility for
 * @param failed objects that it has not, each with the reason
 * @param retrieveTitle who has them, if it says so
 */
public record CommitmentReport(
    String transactionUid,
    List<InstanceReference> kept,
    List<Failed> failed,
    Optional<String> retrieveTitle) {

  /** An object that is not kept; the answer's status is the failure reason (0008,1197). */
  public record Failed(InstanceReference instance, Answer why) {}

  public CommitmentReport {
    kept = List.copyOf(kept);
    failed = List.copyOf(failed);
  }

  static Outcome<CommitmentReport> read(byte[] bytes, String transferSyntax) {
    return DataSetReader.read(bytes, new TransferSyntax(transferSyntax))
        .then(CommitmentReport::read);
  }

  private static Outcome<CommitmentReport> read(DataSet data) {
    Optional<String> transaction = data.string(NetTags.TRANSACTION_UID);
    if (transaction.isEmpty()) {
      return Outcome.refused(
          "a storage commitment report has no transaction UID", "ask the archive's maker");
    }
    List<Failed> failed = new ArrayList<>();
    for (DataSet item : data.items(NetTags.FAILED_SOP_SEQUENCE)) {
      int reason = (int) item.integer(NetTags.FAILURE_REASON).orElse(Statuses.PROCESSING_FAILURE);
      failed.add(new Failed(reference(item), Statuses.of(Statuses.OTHER, reason)));
    }
    return Outcome.done(
        new CommitmentReport(
            transaction.get(),
            data.items(Tags.ReferencedSOPSequence).stream()
                .map(CommitmentReport::reference)
                .toList(),
            failed,
            data.string(Tags.RetrieveAETitle)));
  }

  private static InstanceReference reference(DataSet item) {
    return new InstanceReference(
        item.string(Tags.ReferencedSOPClassUID).orElse(""),
        item.string(Tags.ReferencedSOPInstanceUID).orElse(""));
  }
}
