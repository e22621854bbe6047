package org.vestibule.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
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
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;
import org.vestibule.dental.Series;
import org.vestibule.flow.Ingest;
import org.vestibule.flow.IngestRequest;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Progress;
import org.vestibule.flow.Settings;
import org.vestibule.flow.ShareWords;
import org.vestibule.flow.Sharing;
import org.vestibule.flow.WaitingPhotos;
import org.vestibule.flow.WebRules;
import org.vestibule.flow.phone.WayIn;
import org.vestibule.keys.Passwords;
import org.vestibule.samples.SampleFolder;
import org.vestibule.store.index.IndexQuery;
import org.vestibule.store.index.IndexRecord;
import org.vestibule.store.ledger.PhoneLinkRow;
import org.vestibule.store.ledger.ShareRow;

/** The invented practice of {@code samples/}, taken in once for all tests, and its server. */
final class SampleSite {

  static final ZoneId ZONE = ZoneId.of("Europe/Vienna");
  static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-14T06:00:00Z"), ZoneOffset.UTC);
  static final String PASSWORD = "four calm herons wade";

  static final String TODAY_ONE = "V-1401";
  static final String TODAY_OTHER = "V-1402";

  private static SampleSite shared;

  /** Pages that can be reached under a name, as links need it. */
  static final WebRules REACHED =
      new WebRules(
          "127.0.0.1",
          0,
          List.of("localhost"),
          WebRules.Tls.NONE,
          WebRules.DEFAULT.files(),
          "",
          WebRules.DEFAULT.idle(),
          WebRules.DEFAULT.longest());

  private final Path home;
  private final Practice practice;
  private final List<Throwable> defects = new ArrayList<>();
  private final List<String> said = new ArrayList<>();
  private @Nullable PhoneLinkRow phonesPage;
  private @Nullable ShareRow share;

  private SampleSite(Path home, Practice practice) {
    this.home = home;
    this.practice = practice;
  }

  /** The same for all tests; they change nothing that another one looks at. */
  static synchronized SampleSite shared() {
    if (shared == null) {
      try {
        shared = make(Files.createTempDirectory("sample-site"), CLOCK);
        Runtime.getRuntime().addShutdownHook(new Thread(shared::close));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
    return shared;
  }

  /** One for a test that files and corrects. */
  static SampleSite own(Path home) throws IOException {
    return own(home, CLOCK);
  }

  /** The same with a clock that the test moves. */
  static SampleSite own(Path home, Clock clock) throws IOException {
    return make(home, clock);
  }

  private static SampleSite make(Path home, Clock clock) throws IOException {
    Path inbox = SampleFolder.layOut(home);
    Practice practice = Practice.open(home, Settings.defaults(home, ZONE), clock, true).orThrow();
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
    if (role == Role.REFERRER) {
      return referrer(share());
    }
    if (role == Role.PHONE) {
      return phone(phonesPage());
    }
    return sittings().begin(role.word(), role, "", role == Role.READER ? "" : "B. Rook");
  }

  /** Two visits of the day on which the tests' clock stands join the list, once. */
  void visitsOfToday() {
    Path list = home.resolve("visits.csv");
    try {
      if (!Files.readString(list).contains(TODAY_ONE)) {
        Files.writeString(
            list,
            TODAY_ONE
                + ",CL-0417,CROOKED-LANTERN,Quillfeather^Odalys,1984-02-29,F,"
                + "2026-03-14 09:00,2026-03-14 09:45,,,\n"
                + TODAY_OTHER
                + ",CL-0233,CROOKED-LANTERN,Marrowitz^Ilka,1958-09-08,F,"
                + "2026-03-14 07:00,2026-03-14 08:00,,,\n",
            StandardOpenOption.APPEND);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A secret that nobody had before. */
  String secret() {
    return new Secrets(new SecureRandom()).next();
  }

  /** A session of a phone that came by this page. */
  String phone(PhoneLinkRow page) {
    return sittings().begin("", Role.PHONE, String.valueOf(page.number()), page.who());
  }

  /** A link that stays open, to all photographs of one visit. */
  synchronized ShareRow share() {
    if (share == null) {
      share = share("own-copy", false, new Secrets(new SecureRandom()).next()).share();
    }
    return share;
  }

  /** A link with this secret to all photographs of the first visit. */
  ShareLinks.Made share(String purpose, boolean second, String secret) {
    try {
      ShareWords words =
          new ShareWords(
              purpose,
              new Sharing(practice).ofVisit("V-1201").orThrow(),
              "the one who asked",
              "A. Finch",
              "asked at the desk",
              "B. Rook");
      return new ShareLinks(practice)
          .make(words, second, 14, "http://localhost", "B. Rook", secret)
          .orThrow();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A session of somebody who came by this link. */
  String referrer(ShareRow link) {
    return sittings().begin("", Role.REFERRER, String.valueOf(link.number()), "");
  }

  /** A page for phones that stays open. */
  synchronized PhoneLinkRow phonesPage() {
    if (phonesPage == null) {
      phonesPage = phonesPage(TODAY_ONE, new Secrets(new SecureRandom()).next());
    }
    return phonesPage;
  }

  /** A page for phones, opened for a visit with this secret. */
  synchronized PhoneLinkRow phonesPage(String visit, String secret) {
    visitsOfToday();
    return new WayIn(practice)
        .open(visit, Series.BASELINE, Secrets.mark(secret), "B. Rook")
        .orThrow();
  }

  Sittings sittings() {
    return sittings(practice);
  }

  /** The sittings of any practice. */
  static Sittings sittings(Practice practice) {
    return new Sittings(
        practice.store().ledger().sessions(),
        WebRules.DEFAULT,
        practice.clock(),
        new Secrets(new SecureRandom()),
        ended -> {});
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
