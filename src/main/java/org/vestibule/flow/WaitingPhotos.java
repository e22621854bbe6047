package org.vestibule.flow;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.vestibule.base.ContentHash;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.store.index.IndexRecord;
import org.vestibule.store.index.IndexRecordJson;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.SeenFile;
import org.vestibule.store.ledger.WaitingRow;

/** What waits for a person, and why. */
public final class WaitingPhotos {

  private final Practice practice;
  private final Ledger ledger;

  public WaitingPhotos(Practice practice) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
  }

  /** Everything that waits, the longest waiting first. */
  public List<WaitingPhoto> all() {
    return ledger.waiting().all().stream().map(this::describe).toList();
  }

  private WaitingPhoto describe(WaitingRow row) {
    String name =
        ledger.arrivals().of(row.hash()).stream().map(SeenFile::name).findFirst().orElse("");
    return new WaitingPhoto(
        row.hash(),
        practice.store().ids().of(row.hash()),
        name,
        facts(row.hash()).takenAt(),
        row.since(),
        WaitingJson.proposal(row.proposal()),
        WaitingJson.reasons(row.reasons()));
  }

  private CaptureFacts facts(ContentHash hash) {
    Optional<String> json = ledger.arrivals().facts(hash, FactsJson.KIND);
    return json.map(FactsJson::read).orElse(CaptureFacts.NONE);
  }

  /** Lets a photograph wait; true if that is new or its reasons changed. */
  boolean put(
      ContentHash hash,
      List<WaitingPhoto.Reason> reasons,
      Map<String, String> proposal,
      IndexRecord description) {
    return ledger
        .waiting()
        .put(
            hash,
            WaitingJson.reasons(reasons),
            WaitingJson.proposal(proposal),
            IndexRecordJson.write(description));
  }
}
