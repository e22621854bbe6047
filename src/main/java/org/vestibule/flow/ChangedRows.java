package org.vestibule.flow;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.vestibule.assign.Assignment.Decided;
import org.vestibule.assign.Decision;
import org.vestibule.assign.PhotoFact;
import org.vestibule.assign.RollAssigner;
import org.vestibule.base.Outcome.Done;
import org.vestibule.intake.Photo;

/**
 * Notices rows that were changed after their photograph was filed: they change nothing by
 * themselves.
 */
final class ChangedRows {

  private final Practice practice;

  ChangedRows(Practice practice) {
    this.practice = practice;
  }

  /** What to say of a filed photograph whose row now says what nobody ever decided of it. */
  Optional<String> note(Photo photo, RollAssigner assigner) {
    if (!assigner.hasRow(photo)
        || !(assigner.assign(photo, List.of()) instanceof Decided now)
        || decidedOnce(photo, now.decision())) {
      return Optional.empty();
    }
    return Optional.of(
        photo.arrival().shownName()
            + " is filed already, as photograph "
            + practice.store().ids().of(photo.arrival().hash())
            + ", and its row now says something else. If the row is right, correct it with move.");
  }

  private boolean decidedOnce(Photo photo, Decision now) {
    Integer exif = photo.facts().orientation();
    Map<PhotoFact, String> said = now.said(exif);
    return practice.store().ledger().decisions().of(photo.arrival().hash()).stream()
        .map(row -> DecisionJson.read(row.json()).toDecision(practice.views()))
        .anyMatch(
            earlier ->
                earlier instanceof Done<Decision> done && done.value().said(exif).equals(said));
  }
}
