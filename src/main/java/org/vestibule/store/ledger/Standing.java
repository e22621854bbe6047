package org.vestibule.store.ledger;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Holds what the ledger says of now against the histories from which it follows. A digest tells
 * that a row is as it was written; this tells that what was written fits together.
 */
final class Standing {

  private record Rule(String says, String broken) {}

  private static final String CURRENT =
      "EXISTS (SELECT 1 FROM intent i JOIN kept k ON k.practice = i.practice AND k.sop_uid ="
          + " i.sop_uid WHERE i.practice = p.practice AND i.hash = p.hash AND NOT EXISTS (SELECT 1"
          + " FROM correction c WHERE c.practice = i.practice AND c.hash = i.hash AND c.revision ="
          + " i.revision))";
  private static final String OPEN =
      "EXISTS (SELECT 1 FROM intent i WHERE i.practice = p.practice AND i.hash = p.hash AND NOT"
          + " EXISTS (SELECT 1 FROM kept k WHERE k.practice = i.practice AND k.sop_uid = i.sop_uid)"
          + " AND NOT EXISTS (SELECT 1 FROM abandoned a WHERE a.practice = i.practice AND a.sop_uid"
          + " = i.sop_uid))";
  private static final String WAITS =
      "EXISTS (SELECT 1 FROM waiting w WHERE w.practice = p.practice AND w.hash = p.hash)";
  private static final String SHOWN =
      "(SELECT c.record IS NOT NULL FROM change c WHERE c.practice = p.practice AND c.id = p.hash"
          + " ORDER BY c.sequence DESC LIMIT 1)";

  private static final List<Rule> RULES =
      List.of(
          new Rule(
              "stand as waiting and don't wait, or the other way round",
              "photo p WHERE (p.state = 'WAITING') <> " + WAITS),
          new Rule(
              "stand as begun and are not, or the other way round",
              "photo p WHERE (p.state = 'INTENDED') <> " + OPEN),
          new Rule(
              "stand as filed without an object, or the other way round",
              "photo p WHERE p.state <> 'INTENDED' AND (p.state = 'KEPT') <> " + CURRENT),
          new Rule(
              "stand as taken out, and nobody took them out",
              "photo p WHERE p.state = 'REJECTED' AND NOT EXISTS (SELECT 1 FROM correction c WHERE"
                  + " c.practice = p.practice AND c.hash = p.hash AND c.kind = 'REJECTED') AND NOT"
                  + " EXISTS (SELECT 1 FROM event e WHERE e.practice = p.practice AND e.hash ="
                  + " p.hash AND e.what = 'dismissed')"),
          new Rule(
              "are in search and should not be, or the other way round",
              "photo p WHERE (p.state IN ('KEPT', 'WAITING') AND NOT coalesce("
                  + SHOWN
                  + ", 0)) OR (p.state = 'REJECTED' AND coalesce("
                  + SHOWN
                  + ", 0))"),
          new Rule(
              "have another size than the files that arrived",
              "photo p WHERE NOT EXISTS (SELECT 1 FROM arrival a WHERE a.practice = p.practice AND"
                  + " a.hash = p.hash AND a.size = p.size)"),
          new Rule(
              "wait for other reasons than were recorded",
              "waiting p WHERE NOT coalesce((SELECT h.reasons = p.reasons AND h.proposal ="
                  + " p.proposal FROM waiting_history h WHERE h.practice = p.practice AND h.hash ="
                  + " p.hash ORDER BY h.number DESC LIMIT 1), 0)"),
          new Rule(
              "are filed by a decision about another photograph",
              "intent p WHERE NOT EXISTS (SELECT 1 FROM decision d WHERE d.practice = p.practice"
                  + " AND d.id = p.decision AND d.hash = p.hash)"),
          new Rule(
              "are filed in a series of another study",
              "intent p WHERE NOT EXISTS (SELECT 1 FROM series s WHERE s.practice = p.practice AND"
                  + " s.series_uid = p.series_uid AND s.study_uid = p.study_uid)"),
          new Rule(
              "were filed and were given up",
              "intent p WHERE EXISTS (SELECT 1 FROM kept k WHERE k.practice = p.practice AND"
                  + " k.sop_uid = p.sop_uid) AND EXISTS (SELECT 1 FROM abandoned a WHERE a.practice"
                  + " = p.practice AND a.sop_uid = p.sop_uid)"));

  private static final String PATIENTS =
      "SELECT count(*) AS n FROM patient p LEFT JOIN patient_history h ON h.number = (SELECT"
          + " max(number) FROM patient_history x WHERE x.practice = p.practice AND x.issuer ="
          + " p.issuer AND x.id = p.id) WHERE (p.name, p.birth_date, p.sex, p.details) IS NOT"
          + " (h.name, h.birth_date, h.sex, h.details)";
  private static final String VISITS =
      "SELECT count(*) AS n FROM visit p LEFT JOIN visit_history h ON h.number = (SELECT"
          + " max(number) FROM visit_history x WHERE x.practice = p.practice AND x.key = p.key)"
          + " WHERE (p.issuer, p.patient_id, p.starts, p.ends, p.zone, p.accession, p.referrer,"
          + " p.dentist, p.details) IS NOT (h.issuer, h.patient_id, h.starts, h.ends, h.zone,"
          + " h.accession, h.referrer, h.dentist, h.details)";

  private Standing() {}

  /** What does not follow from the histories, in words. */
  static List<String> contradictions(Database database) {
    List<String> found = new ArrayList<>();
    for (Rule rule : RULES) {
      List<String> photos =
          database.list(
              "SELECT DISTINCT substr(p.hash, 1, 10) AS id FROM " + rule.broken() + " LIMIT 5",
              row -> row.text("id"));
      if (!photos.isEmpty()) {
        found.add("photographs " + rule.says() + " (at least " + String.join(", ", photos) + ")");
      }
    }
    different(database, PATIENTS, "patient").ifPresent(found::add);
    different(database, VISITS, "visit").ifPresent(found::add);
    return found;
  }

  private static Optional<String> different(Database database, String sql, String what) {
    int count = database.list(sql, row -> row.number("n")).get(0);
    return count == 0
        ? Optional.empty()
        : Optional.of(
            count == 1
                ? "1 " + what + " is not as its history says"
                : count + " " + what + "s are not as their history says");
  }
}
