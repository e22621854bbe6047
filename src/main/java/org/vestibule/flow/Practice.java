package org.vestibule.flow;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import org.vestibule.audit.AuditTrail;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.store.Store;
import org.vestibule.store.StoreSettings;
import org.vestibule.store.steps.WriteSteps;

/** A practice's opened home folder: settings, catalogue and store. */
public final class Practice implements AutoCloseable {

  private final Path home;
  private final Settings settings;
  private final ViewCatalogue views;
  private final Store store;
  private final Clock clock;
  private final Auditing audit;

  private Practice(Path home, Settings settings, ViewCatalogue views, Store store, Clock clock) {
    this.home = home;
    this.settings = settings;
    this.views = views;
    this.store = store;
    this.clock = clock;
    this.audit = new Auditing(store.ledger(), new AuditTrail(settings.audit(), home, clock));
  }

  /**
   * Opens a practice.
   *
   * @param mayBegin true if a home folder may be made where there is none
   */
  public static Outcome<Practice> open(Path home, Settings settings, Clock clock, boolean mayBegin)
      throws IOException {
    return open(home, settings, clock, mayBegin, WriteSteps.PASS);
  }

  /**
   * Opens a practice and tells of every step of a write.
   *
   * @param mayBegin true if a home folder may be made where there is none
   * @param steps told of every step of a write
   */
  public static Outcome<Practice> open(
      Path home, Settings settings, Clock clock, boolean mayBegin, WriteSteps steps)
      throws IOException {
    if (!mayBegin && !isBegun(home)) {
      return Outcome.refused(
          "there is no practice here yet (" + home.getFileName() + ")",
          "run ingest or \"visits add\" first, or name another folder with --home");
    }
    Outcome<ViewCatalogue> views = views(settings.views());
    if (views instanceof Refused<ViewCatalogue> refused) {
      return refused.as();
    }
    StoreSettings where = new StoreSettings(home, settings.objects(), settings.practiceId());
    return Store.open(where, clock, steps, new SecureRandom())
        .map(store -> new Practice(home, settings, views.orThrow(), store, clock));
  }

  /** True if the home folder holds a practice's ledger. */
  public static boolean isBegun(Path home) {
    return Files.exists(home.resolve("ledger.sqlite"));
  }

  private static Outcome<ViewCatalogue> views(Path ownViews) throws IOException {
    if (!Files.exists(ownViews)) {
      return Outcome.done(ViewCatalogue.standard());
    }
    try (Reader reader = Files.newBufferedReader(ownViews, StandardCharsets.UTF_8)) {
      Outcome<ViewCatalogue> read = ViewCatalogue.standard().with(reader);
      return read instanceof Refused<ViewCatalogue> refused
          ? Outcome.refused(ownViews.getFileName() + ": " + refused.reason(), refused.advice())
          : read;
    } catch (CharacterCodingException e) {
      return Outcome.refused(ownViews.getFileName() + " is not UTF-8 text", "save it as UTF-8");
    }
  }

  public Path home() {
    return home;
  }

  public Settings settings() {
    return settings;
  }

  public ViewCatalogue views() {
    return views;
  }

  public TeethReader teeth() {
    return new TeethReader(settings.notation());
  }

  public Store store() {
    return store;
  }

  public Clock clock() {
    return clock;
  }

  /** Where the site's audit repository is told of what is done. */
  public Auditing audit() {
    return audit;
  }

  @Override
  public void close() throws IOException {
    try {
      audit.close();
    } finally {
      store.close();
    }
  }
}
