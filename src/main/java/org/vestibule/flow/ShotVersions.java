package org.vestibule.flow;

import java.util.Optional;
import java.util.Set;
import org.vestibule.base.ContentHash;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.store.ledger.PhotoRow;
import org.vestibule.store.ledger.PhotoState;
import org.vestibule.store.ledger.Photos;

/**
 * Which photographs are versions of one shot, whenever they arrived: an edited copy that comes a
 * day after its original is one case with it, never a second filing.
 */
final class ShotVersions {

  private static final Set<PhotoState> FILED = Set.of(PhotoState.KEPT, PhotoState.INTENDED);

  private final Practice practice;
  private final PhotoMarks marks;
  private final Photos photos;

  ShotVersions(Practice practice) {
    this.practice = practice;
    this.marks = new PhotoMarks(practice);
    this.photos = practice.store().ledger().photos();
  }

  /** The id of another version of this photograph's shot that is filed or being filed. */
  Optional<String> filed(ContentHash hash, CaptureFacts facts) {
    return facts
        .shot()
        .flatMap(
            shot ->
                marks.ofShot(shot).stream()
                    .filter(other -> !other.equals(hash))
                    .filter(this::isFiled)
                    .findFirst())
        .map(practice.store().ids()::of);
  }

  private boolean isFiled(ContentHash hash) {
    return photos.find(hash).map(PhotoRow::state).filter(FILED::contains).isPresent();
  }
}
