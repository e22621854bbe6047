package org.vestibule.forward;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.forward.StoreAnswer.Accepted;
import org.vestibule.forward.StoreAnswer.Failed;
import org.vestibule.forward.StoreAnswer.Reach;
import org.vestibule.store.ledger.Deliveries;
import org.vestibule.store.ledger.DeliveryChange;
import org.vestibule.store.ledger.DeliveryRow;
import org.vestibule.store.ledger.LedgerException;
import org.vestibule.store.ledger.LedgerUnusableException;

/** Sends objects in a session and writes down what became of each. */
final class Sending {

  /** After so many answers they are written down together. */
  private static final int WRITTEN_TOGETHER = 20;

  /** So many objects in a row that find the archive taking nothing, and it is left alone. */
  private static final int STOPS = 2;

  private final Destination to;
  private final Deliveries deliveries;
  private final Changes changes;
  private final ParcelReader reader;
  private final Coercions coercions;
  private final Clock clock;
  private final List<DeliveryChange> unwritten = new ArrayList<>();
  private final List<DeliveryRow> notArrived = new ArrayList<>();
  private final List<DeliveryRow> stopped = new ArrayList<>();
  private String stopWords = "";
  private boolean othersGotThrough;

  Sending(Destination to, Changes changes, ParcelReader reader, Coercions coercions, Clock clock) {
    this.to = to;
    this.deliveries = to.ledger().deliveries();
    this.changes = changes;
    this.reader = reader;
    this.coercions = coercions;
    this.clock = clock;
  }

  /** An object ready to be sent. */
  record Packed(DeliveryRow row, Parcel parcel) {

    static Set<Archive.Form> forms(List<Packed> packed) {
      return packed.stream().map(one -> one.parcel().form()).collect(Collectors.toSet());
    }
  }

  /**
   * What sending came to.
   *
   * @param accepted how many objects the archive took
   * @param sessionOver true if the session can't be used any more
   */
  record Sent(int accepted, boolean sessionOver) {}

  /** True if the archive has said twice in a row that it takes nothing now. */
  boolean isStopped() {
    return stopped.size() >= STOPS;
  }

  /** Why the archive takes nothing; empty if it does. */
  String whyStopped() {
    return stopWords;
  }

  /** Reads the heads of their files; what can't be read is written down as failed. */
  List<Packed> pack(List<DeliveryRow> rows) throws IOException {
    List<Packed> packed = new ArrayList<>();
    for (DeliveryRow row : rows) {
      Outcome<Parcel> parcel = parcel(row);
      if (parcel instanceof Done<Parcel> done) {
        packed.add(new Packed(row, done.value()));
      } else {
        String why = ((Refused<Parcel>) parcel).sentence();
        put(changes.failed(row, row.attempts() + 1, false, -1, why));
      }
    }
    identify(packed);
    write();
    return packed;
  }

  private void identify(List<Packed> packed) {
    to.ledger()
        .together(
            () -> {
              for (Packed one : packed) {
                Instance is = one.parcel().instance();
                deliveries.identify(
                    one.row().number(),
                    is.sopInstanceUid(),
                    is.sopClassUid(),
                    is.studyUid(),
                    is.seriesUid());
              }
              return packed;
            });
  }

  private Outcome<Parcel> parcel(DeliveryRow row) throws IOException {
    String uid = row.sopUid();
    Outcome<String> known =
        uid == null ? to.notes().note(row.hash(), row.revision()) : Outcome.done(uid);
    return known instanceof Done<String> sopUid
        ? reader.read(row, sopUid.value())
        : ((Refused<String>) known).as();
  }

  /**
   * Sends these one after the other, as long as the session lasts and the time is not up. What was
   * taken back since they were packed is left out.
   */
  Sent send(ArchiveSession session, List<Packed> all, Instant until) {
    int accepted = 0;
    boolean over = false;
    for (Packed next : all) {
      if (over || isStopped() || !clock.instant().isBefore(until)) {
        break;
      }
      if (!deliveries.begin(next.row())) {
        continue;
      }
      StoreAnswer answer = storeOrWrite(session, next.parcel());
      accepted += answer instanceof Accepted ? 1 : 0;
      over = answer instanceof Failed failed && failed.reach() == Reach.SESSION;
      answered(next.row(), answer);
    }
    write();
    return new Sent(accepted, over);
  }

  /** A disk here that fails ends the run; the answers that came before are written all the same. */
  private StoreAnswer storeOrWrite(ArchiveSession session, Parcel parcel) {
    try {
      return store(session, parcel);
    } catch (UncheckedIOException disk) {
      if (!(disk instanceof LedgerUnusableException)) {
        write();
      }
      throw disk;
    }
  }

  /** A defect of the program on one object must not keep the others back. */
  private static StoreAnswer store(ArchiveSession session, Parcel parcel) {
    try {
      return session.store(parcel);
    } catch (LedgerException | UncheckedIOException machine) {
      throw machine;
    } catch (RuntimeException defect) {
      return new Failed(
          StoreAnswer.NO_STATUS,
          "the program failed on it ("
              + defect.getClass().getSimpleName()
              + "); please report that",
          Reach.SESSION);
    }
  }

  private void answered(DeliveryRow row, StoreAnswer answer) {
    if (answer instanceof Accepted accepted) {
      othersGotThrough = true;
      blameObjects();
      String uid = row.sopUid() == null ? "" : row.sopUid();
      put(
          changes.sent(
              row, accepted.status(), accepted.words(), coercions.of(uid, accepted.coerced())));
    } else if (answer instanceof StoreAnswer.Refused refused) {
      notArrived.add(row);
      put(changes.refused(row, row.attempts() + 1, refused.status(), refused.words()));
    } else if (answer instanceof Failed failed) {
      failed(row, failed);
    }
    if (unwritten.size() >= WRITTEN_TOGETHER) {
      write();
    }
  }

  private void failed(DeliveryRow row, Failed answer) {
    if (!answer.perhapsThere()) {
      notArrived.add(row);
    }
    if (answer.reach() == Reach.DESTINATION) {
      stopped.add(row);
      stopWords = answer.words();
      put(changes.putOff(row, answer.perhapsThere(), answer.status(), answer.words()));
    } else {
      int attempts = row.attempts() + 1;
      boolean perhaps = answer.perhapsThere();
      put(changes.failed(row, attempts, perhaps, answer.status(), answer.words()));
    }
  }

  /**
   * To be called when all had their turn: one object alone that found no room is to blame itself.
   */
  void settle() {
    if (othersGotThrough && !isStopped()) {
      blameObjects();
      write();
    }
  }

  /** Others get through, so it was these objects and not the archive: their attempts count. */
  private void blameObjects() {
    stopped.forEach(old -> put(changes.failed(old, old.attempts() + 1, false, -1, stopWords)));
    stopped.clear();
    stopWords = "";
  }

  private void put(DeliveryChange change) {
    unwritten.add(change);
  }

  private void write() {
    if (!unwritten.isEmpty()) {
      deliveries.notArrived(List.copyOf(notArrived), List.copyOf(unwritten), to.who());
      notArrived.clear();
      unwritten.clear();
    }
  }
}
