package org.vestibule.store.ledger;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Uids;
import org.vestibule.encode.Role;
import org.vestibule.store.steps.WriteSteps;

/** A ledger of an invented practice, and the short ways through it that tests take. */
final class LedgerFixture {

  static final String PRACTICE = "willow-lane";
  static final Instant NOW = Instant.parse("2026-03-14T06:00:00Z");
  static final Clock CLOCK = Clock.fixed(NOW, ZoneOffset.UTC);

  private LedgerFixture() {}

  static Uids uids() {
    return new Uids(new byte[32]);
  }

  static Ledger open(Path file) {
    return open(file, WriteSteps.PASS);
  }

  static Ledger open(Path file, WriteSteps steps) {
    return Ledger.open(file, PRACTICE, uids(), CLOCK, steps).orThrow();
  }

  /** The file as any other program opens it. */
  static Connection foreign(Path file) throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + file);
  }

  static ContentHash photo(String name) {
    return ContentHash.of(name.getBytes(UTF_8));
  }

  static ContentHash arrive(Ledger ledger, String name) {
    ContentHash hash = photo(name);
    ledger.arrivals().seen(new SeenFile(hash, name, 1000, NOW));
    return hash;
  }

  /** A decision about a photograph and the filing that follows from it. */
  static Filing decide(Ledger ledger, ContentHash hash, String patient, Role... roles) {
    DecisionRow decision =
        ledger.decisions().add(hash, "{\"patient\":\"" + patient + "\"}", "A. Finch", "person", "");
    return filing(hash, decision.id(), patient, roles);
  }

  static Filing filing(ContentHash hash, String decisionId, String patient, Role... roles) {
    return new Filing(
        hash,
        decisionId,
        "to " + patient,
        "1",
        "willow",
        patient,
        "visit of " + patient,
        null,
        "Lumo P1",
        "",
        roles.length == 0 ? List.of(Role.FRAME) : List.of(roles));
  }

  /** The object as it would be kept. */
  static KeptObject object(Intent intent) {
    return new KeptObject(
        intent.sopUid(), photo("file " + intent.sopUid()), photo("picture"), 5000, 0, 0);
  }

  /** Files a photograph to the end. */
  static List<Intent> file(Ledger ledger, Filing filing) {
    List<Intent> intents = ledger.intents().begin(filing, "A. Finch");
    ledger
        .kept()
        .keep(
            filing.hash(),
            intents.stream().map(LedgerFixture::object).toList(),
            "{\"hash\":\"" + filing.hash() + "\",\"patient\":\"" + filing.patientId() + "\"}");
    return intents;
  }

  private static void deliver(Ledger ledger, ContentHash filed) {
    Deliveries deliveries = ledger.deliveries();
    deliveries.outgoing().follow("archive", 100);
    List<DeliveryRow> rows = deliveries.due("archive", DeliveryState.WAITING, NOW, 1);
    deliveries.commitments().begin("2.25.1", "archive", rows);
    deliveries.record(
        List.of(
            new DeliveryChange(
                rows.get(0).number(),
                DeliveryState.CONFIRMED,
                1,
                1,
                true,
                null,
                0,
                "",
                "2.25.1",
                Map.of("PatientID", new DeliveryChange.Changed("P1", "X1")))),
        "A. Finch");
    deliveries.reached("archive", true, "");
    deliveries.removed(filed, "filed.jpg");
  }

  /** Does everything that a ledger records, so that no table stays empty. */
  static void fillEveryTable(Ledger ledger) {
    ledger.visits().put(new PatientRow("willow", "P1", "Reed^Ada", null, null, ""), "A. Finch");
    ledger
        .visits()
        .put(
            new VisitRow(
                "V1",
                "willow",
                "P1",
                "2026-03-12T09:00",
                "2026-03-12T10:00",
                "Europe/Vienna",
                null,
                null,
                null,
                ""),
            "A. Finch");
    ContentHash filed = arrive(ledger, "filed.jpg");
    ledger.arrivals().facts(filed, "camera", "{}");
    ledger.arrivals().mark(filed, "shot", "s1");
    ledger.intents().begin(decide(ledger, filed, "P1"), "A. Finch");
    ledger.intents().abandon(filed, "A. Finch", "can't be turned without loss");
    file(ledger, decide(ledger, filed, "P1", Role.FRAME, Role.CROP));
    deliver(ledger, filed);
    ledger.corrections().reject(filed, "A. Finch", "wrong patient", "unsafe");
    int revision = ledger.corrections().of(filed).get(0).revision();
    ledger.notes().keep(filed, revision, "2.25.3", "unsafe", filed, 1);
    ledger.orders().add(new OrderRow("V1", "WORKLIST", "S1", "{}", CLOCK.instant()), "A. Finch");
    ledger
        .waiting()
        .put(arrive(ledger, "waits.jpg"), "[\"side unknown\"]", "{}", "{\"hash\":\"w\"}");
    ledger.events().add("A. Finch", "exported", filed, "");
    LocalDate day = LocalDate.of(2026, 3, 12);
    ledger.visitCards().add(new VisitCardRow("7Q2MZ4K8RT", "V1", "willow", "P1", day), "A. Finch");
    ledger
        .consents()
        .add(
            new ConsentRow(
                "willow",
                "P1",
                "teaching",
                true,
                day,
                null,
                false,
                "form 3",
                "",
                null,
                "A. Finch",
                CLOCK.instant()));
    ledger.releases().add(release(day));
    ledger.releases().withdraw("2026-1", "A. Finch", "asked to");
    byPhone(ledger);
    shared(ledger);
    ledger.accounts().add("Chair 1", "staff", "a hash", "A. Finch");
    ledger
        .sessions()
        .begin(
            new SessionRow(
                "0".repeat(64),
                "Chair 1",
                "staff",
                "",
                "B. Rook",
                CLOCK.instant(),
                CLOCK.instant(),
                CLOCK.instant()));
  }

  private static void byPhone(Ledger ledger) {
    PhoneLinkRow link =
        ledger
            .phoneLinks()
            .open("1".repeat(64), "V-1", "baseline", "A. Finch", CLOCK.instant().plusSeconds(60));
    ledger.uploads().begin("ab12", link.number(), "IMG_0001.jpg", 3, "frontal");
    ledger.uploads().received("ab12", photo("by phone"), "phone/1/IMG_0001.jpg", true);
    ledger.phoneLinks().end(link.number(), "B. Rook");
  }

  private static void shared(Ledger ledger) {
    ShareRow share =
        ledger
            .shares()
            .add(
                "2".repeat(64),
                "2026-1",
                "a hash",
                "A. Finch",
                CLOCK.instant().plusSeconds(60),
                List.of(
                    new ShareRow.Photo(
                        "copy-01", "R-1", "day 0", "Frontal", "11 21", "L", "F", "3".repeat(64))));
    ledger.shares().came(share.number(), true, "192.0.2.7");
    ledger.shares().end(share.number(), "B. Rook", "seen");
  }

  static ReleaseRow release(LocalDate day) {
    return new ReleaseRow(
        "2026-1",
        "teaching",
        "course in spring",
        "cast bridge",
        "B. Rook",
        "A. Finch",
        day,
        "{}",
        "0".repeat(64),
        List.of(
            new ReleaseRow.Item(
                "2.25.1", "1".repeat(64), "willow", "P1", "R-1", "2.25.2", "photo-01")),
        List.of(new ReleaseRow.Said("2.25.1", "CLEAN_PIXEL_DATA", "A. Finch", day)),
        null);
  }
}
