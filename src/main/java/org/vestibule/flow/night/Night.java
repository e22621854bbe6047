package org.vestibule.flow.night;

import java.io.IOException;
import java.nio.file.Files;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.zip.CRC32;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Ingest;
import org.vestibule.flow.IngestReport;
import org.vestibule.flow.IngestRequest;
import org.vestibule.flow.NightRules;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Progress;
import org.vestibule.flow.Verify;
import org.vestibule.flow.WaitingPhotos;
import org.vestibule.flow.delivering.DeliveryReport;
import org.vestibule.flow.night.NightReport.CopyMade;
import org.vestibule.flow.night.NightReport.Ending;
import org.vestibule.flow.night.NightReport.Stopped;
import org.vestibule.store.Finding;

/** One unattended run in a practice's home folder. */
public final class Night {

  /** How often a run that finds another at work tries again, and how long it waits before each. */
  private static final List<Duration> PAUSES =
      List.of(Duration.ofMinutes(1), Duration.ofMinutes(4), Duration.ofMinutes(10));

  private final Practice practice;
  private final NightRules rules;
  private final String by;
  private final Pause pause;
  private final Clock clock;
  private final Instant began;
  private final List<String> warnings = new ArrayList<>();
  private boolean limitReached;
  private @Nullable CopyMade backup;
  private @Nullable DeliveryReport delivery;

  private Night(Practice practice, NightRules rules, String by, Pause pause) {
    this.practice = practice;
    this.rules = rules;
    this.by = by;
    this.pause = pause;
    this.clock = practice.clock();
    this.began = clock.instant();
  }

  /**
   * Takes in the inbox and reads a share of the objects again.
   *
   * @param by who stands in the ledger for what is filed
   * @param pause how to wait when another run is at work
   */
  public static NightReport run(Practice practice, NightRules rules, String by, Pause pause)
      throws IOException {
    return new Night(practice, rules, by, pause).run();
  }

  private NightReport run() throws IOException {
    Optional<Stopped> problem = new UpFront(practice, rules).problem();
    if (problem.isPresent()) {
      return report(problem.get(), Ending.MACHINE, null, new Share(0, List.of()));
    }
    Files.createDirectories(practice.settings().inbox());
    NightLines lines = new NightLines(practice);
    warnings.addAll(lines.orders(by));
    Outcome<IngestReport> ingest = ingest();
    Share share = verify();
    delivery = pastLimit() ? null : NightDelivery.run(practice, by, pause, warnings);
    warnings.addAll(lines.audit());
    warnings.addAll(SilentPhones.warnings(practice, rules.silentDays()));
    NightRules.Copying copying = rules.backup();
    backup = copying == null ? null : NightBackup.make(practice, copying);
    if (ingest instanceof Done<IngestReport> done) {
      return report(null, ending(done.value(), share), done.value(), share);
    }
    Refused<IngestReport> refused = (Refused<IngestReport>) ingest;
    Ending ending = refused.kind() == Outcome.Kind.BUSY ? Ending.BUSY : Ending.REFUSED;
    return report(
        new Stopped(refused.reason(), refused.advice()),
        share.serious() || copyIsDamaged() ? Ending.DAMAGE : noBackup() ? Ending.NO_BACKUP : ending,
        null,
        share);
  }

  private Outcome<IngestReport> ingest() throws IOException {
    Outcome<IngestReport> report = ingestOnce();
    for (Duration wait : PAUSES) {
      boolean busy =
          report instanceof Refused<IngestReport> refused && refused.kind() == Outcome.Kind.BUSY;
      if (!busy || pastLimit() || !pause.wait(wait)) {
        break;
      }
      report = ingestOnce();
    }
    return report;
  }

  private Outcome<IngestReport> ingestOnce() throws IOException {
    return Ingest.run(
        practice,
        new IngestRequest(
                practice.settings().inbox(),
                practice.settings().inbox().resolve("manifest.csv"),
                by,
                false,
                true)
            .onAllProcessors(),
        new Progress() {
          @Override
          public void at(int done, int of, String name) {}

          @Override
          public boolean mayGoOn() {
            limitReached |= pastLimit();
            return !limitReached;
          }
        });
  }

  private boolean pastLimit() {
    return !clock.instant().isBefore(began.plus(rules.limit()));
  }

  private record Share(int objects, List<Finding> findings) {
    boolean serious() {
      return findings.stream().anyMatch(Finding::isSerious);
    }
  }

  /** Each object's turn comes once in the agreed number of nights, whatever else happens. */
  private Share verify() throws IOException {
    if (pastLimit()) {
      warnings.add("the time limit was reached, so no object was read again this night");
      return new Share(0, List.of());
    }
    int nights = rules.verifyNights();
    long tonight = Math.floorMod(LocalDate.ofInstant(began, ZoneOffset.UTC).toEpochDay(), nights);
    int[] read = {0};
    List<Finding> findings =
        Verify.run(
            practice,
            uid -> {
              boolean turn = turn(uid, nights) == tonight;
              read[0] += turn ? 1 : 0;
              return turn;
            });
    return new Share(read[0], findings);
  }

  private static long turn(String uid, int nights) {
    CRC32 sum = new CRC32();
    sum.update(uid.getBytes(java.nio.charset.StandardCharsets.US_ASCII));
    return sum.getValue() % nights;
  }

  private Ending ending(IngestReport ingest, Share share) {
    if (share.serious() || copyIsDamaged()) {
      return Ending.DAMAGE;
    }
    if (noBackup()) {
      return Ending.NO_BACKUP;
    }
    boolean person =
        ingest.needsPerson()
            || waiting() > 0
            || limitReached
            || !warnings.isEmpty()
            || (delivery != null && delivery.needsPerson())
            || share.findings().stream().anyMatch(Finding::asksForAPerson);
    return person ? Ending.NEEDS_A_PERSON : Ending.DONE;
  }

  private boolean noBackup() {
    return backup != null && !backup.isMade();
  }

  private boolean copyIsDamaged() {
    return backup != null
        && (backup.damage() || backup.findings().stream().anyMatch(Finding::isSerious));
  }

  /** Whatever waits, also what no longer lies in the inbox. */
  private int waiting() {
    WaitingPhotos photos = new WaitingPhotos(practice);
    return photos.all().size() + photos.begun().size();
  }

  private NightReport report(
      @Nullable Stopped stopped, Ending ending, @Nullable IngestReport ingest, Share share) {
    return new NightReport(
        began,
        clock.instant(),
        stopped,
        ingest,
        waiting(),
        share.objects(),
        share.findings(),
        delivery,
        backup,
        warnings,
        ending);
  }
}
