package org.vestibule.web;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.vestibule.flow.BenchRecords;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Settings;
import org.vestibule.flow.WebRules;
import org.vestibule.store.index.IndexRecord;
import org.vestibule.store.index.IndexRecordJson;

/**
 * {@code conformance/bench-pages}: a page of results as the browser sees it, from asking until it
 * is laid out, without its pictures.
 */
final class PagesBench {

  private static final int AT_ONCE = 20_000;

  private static final String ASK =
      """
      const done = arguments[arguments.length - 1];
      const box = document.getElementById("results");
      const start = performance.now();
      fetch("/results?q=" + encodeURIComponent(arguments[0]))
        .then((answer) => answer.text())
        .then((html) => {
          const got = performance.now();
          // These photographs have no files: their pictures are not asked for.
          box.innerHTML = html.replaceAll("<img ", "<img data-");
          box.getBoundingClientRect();
          done([performance.now() - start, got - start, html.length]);
        });
      """;

  private PagesBench() {}

  /** Arguments: a folder, how many photographs, how many questions of each kind, the seed. */
  public static void main(String[] arguments) throws IOException, SQLException {
    Path home = Path.of(arguments[0]);
    BenchRecords records = new BenchRecords(Integer.parseInt(arguments[1]));
    int questions = Integer.parseInt(arguments[2]);
    Settings settings = Settings.defaults(home, ZoneId.of("Europe/Vienna"));
    if (!Practice.isBegun(home)) {
      Practice.open(home, settings, Clock.systemUTC(), true).orThrow().close();
      fill(home, records, Integer.parseInt(arguments[1]));
    }
    try (Practice practice = Practice.open(home, settings, Clock.systemUTC(), true).orThrow()) {
      practice.store().followIndex();
      try (Server server =
          Server.start(
              practice, WebRules.DEFAULT.at(0), null, s -> {}, Throwable::printStackTrace)) {
        Sittings sittings = SampleSite.sittings(practice);
        Browser browser =
            Browser.shared().as(server, sittings.begin("", Role.READER, "", "B. Rook"));
        browser.driver().get(server.address() + "/");
        ask(browser, records, questions, Long.parseLong(arguments[3]));
      }
    }
  }

  /** Writes the changes past the ledger's own doors: a million by them takes an hour. */
  private static void fill(Path home, BenchRecords records, int count) throws SQLException {
    String sql = "INSERT INTO change (practice, id, record, mark, at) VALUES (?, ?, ?, ?, ?)";
    try (Connection ledger =
            DriverManager.getConnection("jdbc:sqlite:" + home.resolve("ledger.sqlite"));
        PreparedStatement insert = ledger.prepareStatement(sql)) {
      ledger.setAutoCommit(false);
      for (int i = 0; i < count; i++) {
        IndexRecord record = records.record(i);
        insert.setString(1, "practice");
        insert.setString(2, record.hash());
        insert.setString(3, IndexRecordJson.write(record));
        insert.setString(4, "mark " + i);
        insert.setString(5, "2026-03-14T06:00:00Z");
        insert.addBatch();
        if (i % AT_ONCE == AT_ONCE - 1) {
          insert.executeBatch();
        }
      }
      insert.executeBatch();
      ledger.commit();
    }
  }

  private static void ask(Browser browser, BenchRecords records, int questions, long seed) {
    List<Double> laidOut = new ArrayList<>();
    List<Double> received = new ArrayList<>();
    double characters = 0;
    for (int round = -1; round < questions; round++) {
      for (int kind = 0; kind < BenchRecords.KINDS; kind++) {
        // As many before, so that everything is warm.
        Random random = new Random(seed + kind + 1000L * Math.max(0, round));
        List<?> took =
            (List<?>) browser.driver().executeAsyncScript(ASK, records.question(kind, random));
        if (round >= 0) {
          laidOut.add(((Number) took.get(0)).doubleValue());
          received.add(((Number) took.get(1)).doubleValue());
          characters += ((Number) took.get(2)).doubleValue();
        }
      }
    }
    say("questions", laidOut.size());
    say("mean characters", characters / laidOut.size());
    say("received p50 ms", at(received, 0.5));
    say("received p99 ms", at(received, 0.99));
    say("laid out p50 ms", at(laidOut, 0.5));
    say("laid out p99 ms", at(laidOut, 0.99));
  }

  private static double at(List<Double> values, double share) {
    List<Double> sorted = new ArrayList<>(values);
    Collections.sort(sorted);
    return sorted.get((int) Math.min(sorted.size() - 1L, Math.round(share * sorted.size())));
  }

  private static void say(String what, double value) {
    System.out.println(what + "\t" + String.format(Locale.ROOT, "%.1f", value));
  }
}
