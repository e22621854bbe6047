package org.vestibule.flow;

import java.util.Optional;
import java.util.Set;
import org.vestibule.base.ContentHash;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.store.ledger.Arrivals;
import org.vestibule.store.ledger.PhotoRow;
import org.vestibule.store.ledger.PhotoState;
import org.vestibule.store.ledger.Photos;

/**
 * Which photographs are versions of one shot, whenever they arrived: an edited copy that comes a
 * day after its original is one case with it, never a second filing.
 */
final class ShotVersions {

  private static final String SHOT = "shot";
  private static final Set<PhotoState> FILED = Set.of(PhotoState.KEPT, PhotoState.INTENDED);

  private final Practice practice;
  private final Arrivals arrivals;
  private final Photos photos;

  ShotVersions(Practice practice) {
    this.practice = practice;
    this.arrivals = practice.store().ledger().arrivals();
    this.photos = practice.store().ledger().photos();
  }

  /** Records which shot a photograph shows, as far as its facts tell. */
  void seen(ContentHash hash, CaptureFacts facts) {
    facts.shot().ifPresent(shot -> arrivals.mark(hash, SHOT, shot));
  }

  /** The id of another version of this photograph's shot that is filed or being filed. */
  Optional<String> filed(ContentHash hash, CaptureFacts facts) {
    return facts
        .shot()
        .flatMap(
            shot ->
                arrivals.marked(SHOT, shot).stream()
                    .filter(other -> !other.equals(hash))
                    .filter(this::isFiled)
                    .findFirst())
        .map(practice.store().ids()::of);
  }

  private boolean isFiled(ContentHash hash) {
    return photos.find(hash).map(PhotoRow::state).filter(FILED::contains).isPresent();
  }
}
