package org.vestibule.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.vestibule.base.ContentHash;
import org.vestibule.flow.Ingest;
import org.vestibule.flow.IngestRequest;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Progress;
import org.vestibule.flow.Settings;
import org.vestibule.flow.WaitingPhotos;
import org.vestibule.flow.WebRules;
import org.vestibule.keys.Passwords;
import org.vestibule.store.index.IndexQuery;
import org.vestibule.store.index.IndexRecord;

/** The invented practice of {@code samples/}, taken in once for all tests, and its server. */
final class SampleSite {

  static final ZoneId ZONE = ZoneId.of("Europe/Vienna");
  static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-14T06:00:00Z"), ZoneOffset.UTC);
  static final String PASSWORD = "four calm herons wade";

  private static SampleSite shared;

  private final Path home;
  private final Practice practice;
  private final List<Throwable> defects = new ArrayList<>();
  private final List<String> said = new ArrayList<>();

  private SampleSite(Path home, Practice practice) {
    this.home = home;
    this.practice = practice;
  }

  /** The same for all tests; they change nothing that another one looks at. */
  static synchronized SampleSite shared() {
    if (shared == null) {
      try {
        shared = make(Files.createTempDirectory("sample-site"));
        Runtime.getRuntime().addShutdownHook(new Thread(shared::close));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
    return shared;
  }

  /** One for a test that files and corrects. */
  static SampleSite own(Path home) throws IOException {
    return make(home);
  }

  private static SampleSite make(Path home) throws IOException {
    Path samples = Path.of("samples");
    Path inbox = Files.createDirectories(home.resolve("inbox"));
    try (Stream<Path> roll = Files.list(samples.resolve("roll"))) {
      for (Path file : roll.toList()) {
        Files.copy(file, inbox.resolve(String.valueOf(file.getFileName())));
      }
    }
    Files.copy(samples.resolve("manifest.csv"), inbox.resolve("manifest.csv"));
    Files.copy(samples.resolve("visits.csv"), home.resolve("visits.csv"));
    Practice practice = Practice.open(home, Settings.defaults(home, ZONE), CLOCK, true).orThrow();
    Ingest.run(
            practice,
            new IngestRequest(inbox, inbox.resolve("manifest.csv"), "nightly job", false, false),
            Progress.NONE)
        .orThrow();
    SampleSite site = new SampleSite(home, practice);
    for (Role role : List.of(Role.READER, Role.STAFF, Role.ADMINISTRATOR)) {
      practice
          .store()
          .ledger()
          .accounts()
          .add(role.word(), role.word(), Passwords.hash(PASSWORD.toCharArray()), "A. Finch");
    }
    return site;
  }

  Practice practice() {
    return practice;
  }

  Path home() {
    return home;
  }

  /** What the servers told whoever runs them. */
  List<String> said() {
    return said;
  }

  /** What the servers called a defect. */
  List<Throwable> defects() {
    return defects;
  }

  /** A server at a free port of this machine. */
  Server serve() {
    return serve(WebRules.DEFAULT);
  }

  Server serve(WebRules rules) {
    return serve(practice, rules);
  }

  Server serve(Practice other, WebRules rules) {
    return Server.start(other, rules.at(0), null, said::add, defects::add);
  }

  /** A secret of a session with this role, as a browser would hold it. */
  String session(Role role) {
    return sittings().begin(role.word(), role, "", role == Role.READER ? "" : "B. Rook");
  }

  Sittings sittings() {
    return new Sittings(
        practice.store().ledger().sessions(),
        WebRules.DEFAULT,
        practice.clock(),
        new Secrets(new SecureRandom()));
  }

  /** All filed photographs, the first one first. */
  List<IndexRecord> filed() throws IOException {
    practice.store().followIndex();
    return practice.store().index().search(IndexQuery.all(1000)).hits().stream()
        .map(hit -> hit.record())
        .filter(IndexRecord::filed)
        .sorted(Comparator.comparing(SampleSite::time).thenComparing(IndexRecord::hash))
        .toList();
  }

  private static LocalDateTime time(IndexRecord record) {
    return record.takenAt() == null ? LocalDateTime.MIN : record.takenAt();
  }

  /** What a photograph is called in addresses. */
  String key(IndexRecord record) {
    return new PhotoKeys(practice).of(new ContentHash(record.hash()));
  }

  /** What the waiting photograph of this file is called in addresses. */
  String waiting(String name) {
    return new WaitingPhotos(practice)
        .all().stream()
            .filter(photo -> photo.name().equals(name))
            .map(photo -> new PhotoKeys(practice).of(photo.hash()))
            .findFirst()
            .orElseThrow();
  }

  private void close() {
    try (Stream<Path> all = Files.walk(home)) {
      practice.close();
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
