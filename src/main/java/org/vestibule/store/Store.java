package org.vestibule.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.stream.Stream;
import org.vestibule.base.Outcome;
import org.vestibule.base.Uids;
import org.vestibule.store.index.CaughtUp;
import org.vestibule.store.index.LucenePhotoIndex;
import org.vestibule.store.index.PhotoIndex;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.objects.FolderObjectStore;
import org.vestibule.store.objects.ObjectStore;
import org.vestibule.store.steps.WriteSteps;

/**
 * A practice's store: objects, ledger, index and secret in their places.
 *
 * <p>In the home folder: {@code ledger.sqlite} (with SQLite's own files beside it), {@code index/},
 * {@code practice.secret}, {@code run.lock}; usually {@code objects/} too.
 */
public final class Store implements AutoCloseable {

  private final StoreSettings settings;
  private final Clock clock;
  private final ObjectStore objects;
  private final Ledger ledger;
  private final LucenePhotoIndex index;
  private final DerivedKeys keys;

  private Store(
      StoreSettings settings,
      Clock clock,
      ObjectStore objects,
      Ledger ledger,
      LucenePhotoIndex index,
      DerivedKeys keys) {
    this.settings = settings;
    this.clock = clock;
    this.objects = objects;
    this.ledger = ledger;
    this.index = index;
    this.keys = keys;
  }

  /** Opens a store, or begins one where there is none. */
  public static Outcome<Store> open(StoreSettings settings, Clock clock) throws IOException {
    return open(settings, clock, WriteSteps.PASS, new SecureRandom());
  }

  /**
   * Opens a store, or begins one where there is none.
   *
   * @param steps told of every step of a write
   * @param random used once, for the secret of a new store
   */
  public static Outcome<Store> open(
      StoreSettings settings, Clock clock, WriteSteps steps, SecureRandom random)
      throws IOException {
    OwnerOnly.createFolder(settings.home());
    Outcome<Path> local = LocalDisk.require(settings.home());
    if (local instanceof Outcome.Refused<Path> refused) {
      return refused.as();
    }
    Path secretFile = settings.home().resolve(SecretFile.NAME);
    Outcome<byte[]> secret = PracticeSecret.readOrCreate(secretFile, exists(settings), random);
    if (!(secret instanceof Outcome.Done<byte[]> known)) {
      return ((Outcome.Refused<byte[]>) secret).as();
    }
    Outcome<Ledger> ledger =
        Ledger.open(
            ledgerFile(settings), settings.practice(), new Uids(known.value()), clock, steps);
    if (!(ledger instanceof Outcome.Done<Ledger> opened)) {
      return ((Outcome.Refused<Ledger>) ledger).as();
    }
    return Outcome.done(
        new Store(
            settings,
            clock,
            new FolderObjectStore(settings.objects(), steps),
            opened.value(),
            new LucenePhotoIndex(settings.home().resolve("index"), steps),
            new DerivedKeys(known.value())));
  }

  private static Path ledgerFile(StoreSettings settings) {
    return settings.home().resolve("ledger.sqlite");
  }

  private static boolean exists(StoreSettings settings) throws IOException {
    if (Files.exists(ledgerFile(settings))) {
      return true;
    }
    if (!Files.isDirectory(settings.objects())) {
      return false;
    }
    try (Stream<Path> inside = Files.list(settings.objects())) {
      return inside.findAny().isPresent();
    }
  }

  public ObjectStore objects() {
    return objects;
  }

  public Ledger ledger() {
    return ledger;
  }

  public PhotoIndex index() {
    return index;
  }

  public PhotoIds ids() {
    return new PhotoIds(ledger);
  }

  /**
   * A key of 32 bytes for one use, made from the practice's secret: always the same for the same
   * use, and nobody gets from it to the secret or to another use's key.
   */
  public byte[] keyFor(String... use) {
    return keys.of(use);
  }

  /**
   * Takes the lock that lets one run at a time write objects; to be closed when the run ends.
   *
   * @param what is going to run, such as {@code ingest}
   */
  public Outcome<RunLock> lock(String what) throws IOException {
    return RunLock.take(settings.home().resolve("run.lock"), what, clock);
  }

  /** The same for a home folder whose ledger can't be opened. */
  public static Outcome<RunLock> lockAt(Path home, String what, Clock clock) throws IOException {
    return RunLock.take(home.resolve("run.lock"), what, clock);
  }

  /** Takes the lock that lets one backup at a time run; runs that write objects go on beside it. */
  public Outcome<RunLock> lockBackup() throws IOException {
    return RunLock.take(settings.home().resolve("backup.lock"), "backup", clock);
  }

  /** Takes the lock that lets one delivery at a time run; everything else goes on beside it. */
  public Outcome<RunLock> lockDelivery() throws IOException {
    return RunLock.take(settings.home().resolve("delivery.lock"), "forward", clock);
  }

  /** Lets the index follow the ledger. */
  public CaughtUp followIndex() throws IOException {
    return index.follow(new LedgerChanges(ledger));
  }

  /** Throws the index away and makes it again from the ledger. */
  public CaughtUp reindex() throws IOException {
    return index.rebuild(new LedgerChanges(ledger));
  }

  /** Re-reads everything and says what is wrong. */
  public StoreVerifier verifier() {
    return new StoreVerifier(objects, ledger, index);
  }

  @Override
  public void close() throws IOException {
    ledger.close();
    index.close();
  }
}
