package org.vestibule.flow;

import java.time.LocalDateTime;
import java.util.List;
import org.vestibule.base.ContentHash;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.FileNames;
import org.vestibule.store.ledger.Arrivals;

/** The marks by which photographs are found again without reading all of the history. */
final class PhotoMarks {

  private static final String SHOT = "shot";
  private static final String DAY = "day";
  private static final String VISIT = "visit";
  private static final String RESTORED = "restored";

  /** The camera by which it was taken. Never its folder, which may have a patient's name. */
  private static final String PHONE = "phone";

  private final Arrivals arrivals;

  PhotoMarks(Practice practice) {
    this.arrivals = practice.store().ledger().arrivals();
  }

  /** Marks a photograph that arrived under this name. */
  void arrived(ContentHash hash, String name, CaptureFacts facts) {
    facts.shot().ifPresent(shot -> arrivals.mark(hash, SHOT, shot));
    arrivals.mark(hash, DAY, day(name, facts));
    String phone = facts.model();
    if (phone != null && !phone.isBlank()) {
      arrivals.mark(hash, PHONE, phone.strip());
    }
  }

  /** Marks a photograph that is being filed under a visit. */
  void filedUnder(ContentHash hash, String visit) {
    arrivals.mark(hash, VISIT, visit);
  }

  /** The photographs that were ever filed under a visit of this key. */
  List<ContentHash> everUnder(String visit) {
    return arrivals.marked(VISIT, visit);
  }

  /** Marks a photograph that was entered again from its object. */
  void restored(ContentHash hash) {
    arrivals.mark(hash, RESTORED, RESTORED);
  }

  /** All photographs that were entered again from their objects. */
  List<ContentHash> restored() {
    return arrivals.marked(RESTORED, RESTORED);
  }

  /** The photographs that show this shot. */
  List<ContentHash> ofShot(String shot) {
    return arrivals.marked(SHOT, shot);
  }

  /** The photographs of the same day; of one without a time, those without one in its folder. */
  List<ContentHash> ofSameDay(String name, CaptureFacts facts) {
    return arrivals.marked(DAY, day(name, facts));
  }

  private static String day(String name, CaptureFacts facts) {
    LocalDateTime taken = facts.takenAt();
    return taken == null
        ? "none in " + FileNames.key(FileNames.folder(name))
        : taken.toLocalDate().toString();
  }
}
