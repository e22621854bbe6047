package org.vestibule.store.ledger;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.function.Supplier;
import org.vestibule.base.Outcome;
import org.vestibule.base.Uids;
import org.vestibule.store.steps.WriteSteps;

/** What happened: the doors to the ledger's chapters, and transactions across them. */
public final class Ledger implements AutoCloseable {

  private final Database database;
  private final Photos photos;
  private final Arrivals arrivals;
  private final Visits visits;
  private final Decisions decisions;
  private final WaitingList waiting;
  private final Intents intents;
  private final KeptObjects kept;
  private final Corrections corrections;
  private final Events events;
  private final Changes changes;
  private final VisitCards visitCards;
  private final Consents consents;
  private final Releases releases;
  private final RestoredFilings restored;
  private final Deliveries deliveries;
  private final Notes notes;
  private final Orders orders;
  private final Accounts accounts;
  private final Sessions sessions;
  private final PhoneLinks phoneLinks;
  private final Uploads uploads;
  private final Shares shares;

  private Ledger(Database database, Uids uids) {
    this.database = database;
    photos = new Photos(database);
    arrivals = new Arrivals(database);
    visits = new Visits(database);
    decisions = new Decisions(database, photos);
    changes = new Changes(database);
    events = new Events(database);
    waiting = new WaitingList(database, photos, changes, events);
    intents = new Intents(database, photos, waiting, new Numbering(database, uids));
    corrections = new Corrections(database, photos, intents, changes, events);
    visitCards = new VisitCards(database);
    consents = new Consents(database);
    releases = new Releases(database);
    restored = new RestoredFilings(database, photos, changes, uids);
    deliveries = new Deliveries(database);
    notes = new Notes(database, uids);
    orders = new Orders(database);
    accounts = new Accounts(database, events);
    sessions = new Sessions(database);
    phoneLinks = new PhoneLinks(database);
    uploads = new Uploads(database);
    shares = new Shares(database);
    kept = new KeptObjects(database, photos, intents, decisions, corrections, changes);
  }

  /**
   * Opens the ledger of a practice, or begins it.
   *
   * @param file on a local disk
   * @param uids made with the practice's secret
   */
  public static Outcome<Ledger> open(
      Path file, String practice, Uids uids, Clock clock, WriteSteps steps) {
    if (practice.isBlank()) {
      return Outcome.refused(
          "the practice has no id", "name one in the settings, such as \"main-street\"");
    }
    Database database = Database.open(file, practice, clock, steps);
    Outcome<Database> ready;
    try {
      ready = Schema.prepare(database).then(fitting -> SecretMark.require(fitting, uids));
    } catch (LedgerException | LedgerUnusableException e) {
      database.close();
      throw e;
    }
    if (ready instanceof Outcome.Refused<Database> refused) {
      database.close();
      return refused.as();
    }
    return Outcome.done(new Ledger(database, uids));
  }

  /**
   * Does several things in one transaction: all of them are on the disk when this returns, or none
   * if it throws.
   */
  public <T> T together(Supplier<T> work) {
    return database.together(work);
  }

  public String practice() {
    return database.practice();
  }

  public Photos photos() {
    return photos;
  }

  public VisitCards visitCards() {
    return visitCards;
  }

  public Arrivals arrivals() {
    return arrivals;
  }

  public Visits visits() {
    return visits;
  }

  public Decisions decisions() {
    return decisions;
  }

  public WaitingList waiting() {
    return waiting;
  }

  public Intents intents() {
    return intents;
  }

  public KeptObjects kept() {
    return kept;
  }

  public Corrections corrections() {
    return corrections;
  }

  public Events events() {
    return events;
  }

  public Changes changes() {
    return changes;
  }

  public Consents consents() {
    return consents;
  }

  public RestoredFilings restored() {
    return restored;
  }

  public Releases releases() {
    return releases;
  }

  public Deliveries deliveries() {
    return deliveries;
  }

  public Notes notes() {
    return notes;
  }

  public Orders orders() {
    return orders;
  }

  public Accounts accounts() {
    return accounts;
  }

  public Sessions sessions() {
    return sessions;
  }

  public PhoneLinks phoneLinks() {
    return phoneLinks;
  }

  public Uploads uploads() {
    return uploads;
  }

  public Shares shares() {
    return shares;
  }

  /**
   * What is wrong with the file: what SQLite finds, rows that name others which are not there, and
   * tables or triggers that are not this program's; empty if it is sound.
   */
  public List<String> faults() {
    return database.with(FileCheck::faults);
  }

  /** Which rows are not as they were written, in words; reads all of them. */
  public List<String> brokenSeals() {
    return database.with(SealCheck::broken);
  }

  /** What the ledger says of now and what does not follow from its histories, in words. */
  public List<String> contradictions() {
    return Standing.contradictions(database);
  }

  /**
   * Takes every row as it is now for what was written, and records who said so: the last way out
   * where no sound copy is left.
   */
  public void sealAnew(String who, String why) {
    database.together(
        () -> {
          Seals.anew(database);
          events.add(who, "ledger taken as it is", null, why);
          return why;
        });
  }

  /**
   * Writes a copy of the ledger as it is at this moment, while others go on writing.
   *
   * @param file on any disk; it must not be there yet
   */
  public void copyTo(Path file) {
    database.run("VACUUM INTO ?", file.toAbsolutePath());
  }

  @Override
  public void close() {
    database.close();
  }
}
