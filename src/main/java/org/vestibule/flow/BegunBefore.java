package org.vestibule.flow;

import java.io.IOException;
import java.util.List;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Resumption.Begun;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.PhotoRow;
import org.vestibule.store.ledger.PhotoState;

/**
 * Completes everything that earlier runs began and did not finish, wherever the photographs lie,
 * and tells of what can't be completed.
 */
final class BegunBefore {

  private final Practice practice;
  private final Tally tally;
  private final Ledger ledger;
  private final Resumption resumption;
  private final Setback setback;

  BegunBefore(Practice practice, Tally tally) {
    this.practice = practice;
    this.tally = tally;
    this.ledger = practice.store().ledger();
    this.resumption = new Resumption(practice, new Filer(practice));
    this.setback = new Setback(practice);
  }

  void completeAll() throws IOException {
    for (PhotoRow photo : ledger.photos().in(PhotoState.INTENDED)) {
      complete(photo.hash());
    }
  }

  private void complete(ContentHash hash) throws IOException {
    Outcome<Begun> gathered = resumption.gather(hash);
    if (gathered instanceof Done<Begun> begun) {
      complete(begun.value());
    } else {
      Refused<Begun> missing = (Refused<Begun>) gathered;
      WaitingPhoto.Reason reason =
          new WaitingPhoto.Reason("UNFINISHED", missing.reason(), missing.advice());
      tally.unfinished(new WaitingPhotos(practice).described(hash, List.of(reason)));
    }
  }

  private void complete(Begun begun) throws IOException {
    try {
      Outcome<FiledPhoto> done = resumption.complete(begun);
      if (done instanceof Done<FiledPhoto> filed) {
        tally.completed(begun.picture().hash(), filed.value());
      } else {
        tookBack(begun, setback.refused(begun, (Refused<FiledPhoto>) done));
      }
    } catch (RuntimeException | StackOverflowError | OutOfMemoryError failure) {
      if (Setback.isMachine(failure)) {
        throw failure;
      }
      tally.defect(begun.picture().name(), failure);
      tookBack(begun, setback.failed(begun, failure));
    }
  }

  /** It waits, or stands as it was filed before; then this is the only time that a person hears. */
  private void tookBack(Begun begun, WaitingPhoto.Reason reason) {
    WaitingPhotos photos = new WaitingPhotos(practice);
    ContentHash hash = begun.picture().hash();
    photos
        .find(hash)
        .ifPresentOrElse(
            tally::waits, () -> tally.unfinished(photos.described(hash, List.of(reason))));
  }
}
