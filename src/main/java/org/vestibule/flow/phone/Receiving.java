package org.vestibule.flow.phone;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.locks.ReentrantLock;
import java.util.stream.IntStream;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.store.ledger.PhoneLinkRow;
import org.vestibule.store.ledger.UploadRow;
import org.vestibule.store.ledger.Uploads;

/**
 * Receives files that phones send, piece by piece. A file grows outside the inbox; when it is
 * whole, proved and on the disk, it gets its place in the inbox in one step.
 */
public final class Receiving {

  /**
   * How far a file has come.
   *
   * @param receivedBytes how many of its bytes are here
   * @param hash SHA-256 of all of them; empty as long as the file is not in the inbox
   * @param confirmed true if the phone computed the same hash
   */
  public record State(
      String id, String name, long sizeBytes, long receivedBytes, String hash, boolean confirmed) {}

  /** So much of a file is taken at once; small, so that little is lost when a connection breaks. */
  public static final int LONGEST_PIECE_BYTES = 512 * 1024;

  /** Whole files are held in memory while they are checked: only so many at once. */
  private static final int CHECKED_AT_ONCE = 2;

  private static final int LOCKS = 64;

  private final Practice practice;
  private final Uploads uploads;
  private final PartFiles parts;
  private final InboxPlace places;
  private final UploadLimits limits;
  private final Semaphore checks = new Semaphore(CHECKED_AT_ONCE);

  /** One for each file that is worked on; two files may have the same. */
  private final List<ReentrantLock> busy =
      IntStream.range(0, LOCKS).mapToObj(any -> new ReentrantLock()).toList();

  public Receiving(Practice practice, UploadRules rules) {
    this.practice = practice;
    this.uploads = practice.store().ledger().uploads();
    this.parts = new PartFiles(practice.home().resolve("uploads"));
    this.places = new InboxPlace(practice.settings().inbox(), uploads);
    this.limits = new UploadLimits(rules);
  }

  /** Gives files their place in the inbox that were whole when the program was stopped. */
  public void completeInterrupted() throws IOException {
    for (String id : parts.ids()) {
      Optional<UploadRow> row = uploads.find(id);
      UploadRow.Received received = row.map(UploadRow::received).orElse(null);
      if (received != null) {
        places.move(parts.of(row.orElseThrow()), received.arrivedAs());
      }
    }
    parts.forgetOld(practice.clock().instant());
  }

  /**
   * Begins a file, or goes on with one of the same name and size that was begun by this page and
   * not ended; refused if it is too large, too many came, or the disk is nearly full.
   *
   * @param id not used before, hexadecimal
   * @param name as the phone has it
   * @param view a view's key, or empty
   */
  public Outcome<State> begin(
      PhoneLinkRow link, String id, String name, long sizeBytes, String view) throws IOException {
    if (!view.isEmpty() && practice.views().byKey(view).isEmpty()) {
      return Outcome.refused("this is not a view that is known", "load the page again");
    }
    Path inbox = Files.createDirectories(practice.settings().inbox());
    List<UploadRow> before = uploads.of(link.number());
    Optional<UploadRow> begun =
        before.stream()
            .filter(row -> row.received() == null && parts.isThere(row))
            .filter(row -> row.name().equals(PhoneNames.clean(name)))
            .filter(row -> row.sizeBytes() == sizeBytes && row.view().equals(view))
            .findFirst();
    if (begun.isPresent()) {
      return Outcome.done(state(begun.get()));
    }
    Outcome<Long> allowed =
        limits.allows(before, sizeBytes, parts.freeBytes(), InboxPlace.free(inbox));
    if (allowed instanceof Refused<Long> refused) {
      return refused.as();
    }
    UploadRow row = uploads.begin(id, link.number(), PhoneNames.clean(name), sizeBytes, view);
    parts.create(row);
    return Outcome.done(state(row));
  }

  /** All files of a page, in the order in which they were begun. */
  public List<State> all(PhoneLinkRow link) throws IOException {
    return uploads.of(link.number()).stream().map(this::state).toList();
  }

  /** How far a file has come; empty if this page has no such file. */
  public Optional<State> find(PhoneLinkRow link, String id) throws IOException {
    return row(link, id).map(this::state);
  }

  private Optional<UploadRow> row(PhoneLinkRow link, String id) {
    return uploads.find(id).filter(row -> row.link() == link.number());
  }

  private State state(UploadRow row) {
    UploadRow.Received received = row.received();
    if (received == null) {
      return new State(row.id(), row.name(), row.sizeBytes(), parts.length(row), "", false);
    }
    return !isHere(received)
        ? new State(row.id(), row.name(), row.sizeBytes(), 0, "", false)
        : new State(
            row.id(),
            row.name(),
            row.sizeBytes(),
            row.sizeBytes(),
            received.hash().hex(),
            received.confirmed());
  }

  /**
   * True if a file that was received is in the inbox, or was taken in. A restored backup knows
   * files that it does not hold, and somebody may have moved one away: neither may be called safe.
   */
  private boolean isHere(UploadRow.Received received) {
    return Files.exists(practice.settings().inbox().resolve(received.arrivedAs()))
        || practice.store().ledger().photos().find(received.hash()).isPresent();
  }

  /**
   * Adds a piece. If its connection breaks off, what came of it stays. It is read before the file
   * is held, since another may wait for the same one, and the line may be slow.
   *
   * @param piece read for at most {@link #LONGEST_PIECE_BYTES} bytes
   * @param from how many bytes lie before it; if that is not what is here, nothing is added
   * @return how far the file has come
   */
  public Outcome<State> add(PhoneLinkRow link, String id, long from, InputStream piece)
      throws IOException {
    Optional<UploadRow> row = row(link, id);
    if (row.isEmpty()) {
      return unknown();
    }
    byte[] bytes = PieceReader.read(piece, LONGEST_PIECE_BYTES);
    return alone(
        id,
        () -> {
          if (uploads.find(id).orElseThrow().received() == null
              && parts.length(row.get()) == from) {
            parts.add(row.get(), bytes);
            Outcome<Long> jpeg = ProperJpeg.begins(parts.of(row.get()));
            if (jpeg instanceof Refused<Long> refused) {
              parts.remove(row.get());
              return refused.as();
            }
          }
          return Outcome.done(state(uploads.find(id).orElseThrow()));
        });
  }

  /**
   * Ends a file: its hash is compared, it is looked through from end to end, brought to the disk
   * and given its place in the inbox. Asked again, it says the same.
   *
   * @param hash SHA-256 as the phone computed it, in hexadecimal; empty if it could not
   */
  public Outcome<State> end(PhoneLinkRow link, String id, String hash) throws IOException {
    Optional<UploadRow> row = row(link, id);
    return row.isEmpty() ? unknown() : alone(id, () -> endNow(row.get(), hash));
  }

  private Outcome<State> endNow(UploadRow begun, String hash) throws IOException {
    UploadRow row = uploads.find(begun.id()).orElseThrow();
    Path part = parts.of(row);
    UploadRow.Received before = row.received();
    if (before != null) {
      places.move(part, before.arrivedAs());
      return Outcome.done(state(row));
    }
    if (parts.length(row) != row.sizeBytes()) {
      return Outcome.refused(
          "only " + parts.length(row) + " of " + row.sizeBytes() + " bytes are here",
          "send the rest");
    }
    Outcome<ContentHash> proved = proved(part, hash);
    if (!(proved instanceof Done<ContentHash> whole)) {
      parts.remove(row);
      return ((Refused<ContentHash>) proved).as();
    }
    parts.sync(row);
    return Outcome.done(state(received(row, whole.value(), !hash.isEmpty())));
  }

  /** The ledger knows it before the inbox does, so that no photograph lies there unsaid. */
  private UploadRow received(UploadRow row, ContentHash hash, boolean confirmed)
      throws IOException {
    synchronized (places) {
      String name = places.free(row.link(), row.name());
      UploadRow received = uploads.received(row.id(), hash, name, confirmed);
      places.move(parts.of(row), name);
      return received;
    }
  }

  private Outcome<ContentHash> proved(Path part, String hash) throws IOException {
    ContentHash ours = ContentHash.of(part);
    if (!hash.isEmpty() && !hash.equals(ours.hex())) {
      return Outcome.refused(
          "the bytes that came are not those that the phone sent", "send the file again");
    }
    checks.acquireUninterruptibly();
    try {
      return ProperJpeg.whole(part).map(checked -> ours);
    } finally {
      checks.release();
    }
  }

  private static <T> Outcome<T> unknown() {
    return Outcome.refused("there is no such file here", "choose the photograph again");
  }

  @FunctionalInterface
  private interface Step {
    Outcome<State> run() throws IOException;
  }

  /** One piece of a file at a time. */
  private Outcome<State> alone(String id, Step step) throws IOException {
    ReentrantLock lock = busy.get(Math.floorMod(id.hashCode(), LOCKS));
    lock.lock();
    try {
      return step.run();
    } finally {
      lock.unlock();
    }
  }
}
