package org.vestibule.flow;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.store.index.IndexRecord;
import org.vestibule.store.index.IndexRecordJson;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.PhotoState;
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

  /** One photograph, if it waits. */
  Optional<WaitingPhoto> find(ContentHash hash) {
    return ledger.waiting().find(hash).map(this::describe);
  }

  /** What is being filed at this moment, or was when its run was interrupted. */
  public List<WaitingPhoto> begun() {
    List<WaitingPhoto.Reason> reasons =
        List.of(
            new WaitingPhoto.Reason(
                "UNFINISHED",
                "its filing was begun and is not finished",
                "if no run is at work, run ingest: it completes this, or says what it lacks; file"
                    + " and reject work too"));
    return ledger.photos().in(PhotoState.INTENDED).stream()
        .map(photo -> described(photo.hash(), reasons))
        .toList();
  }

  private WaitingPhoto describe(WaitingRow row) {
    return described(
        row.hash(),
        row.since(),
        WaitingJson.proposal(row.proposal()),
        WaitingJson.reasons(row.reasons()));
  }

  WaitingPhoto described(ContentHash hash, List<WaitingPhoto.Reason> reasons) {
    return described(hash, null, Map.of(), reasons);
  }

  private WaitingPhoto described(
      ContentHash hash,
      @Nullable Instant since,
      Map<String, String> proposal,
      List<WaitingPhoto.Reason> reasons) {
    String name = ledger.arrivals().of(hash).stream().map(SeenFile::name).findFirst().orElse("");
    return new WaitingPhoto(
        hash,
        practice.store().ids().of(hash),
        name,
        facts(hash).takenAt(),
        since,
        proposal,
        reasons,
        new PictureAdvice(practice).waiting(hash));
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
