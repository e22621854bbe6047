package org.vestibule.flow.night;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.vestibule.base.Outcome;
import org.vestibule.flow.Practice;
import org.vestibule.flow.look.Card;
import org.vestibule.flow.look.Fact;
import org.vestibule.flow.look.Sheet;
import org.vestibule.flow.look.SheetFile;

/**
 * Where a night is told of, in the home's folder {@code night}: the page and the lines of the last
 * one, a log of all, metrics, and the heartbeat. Nothing there names a patient.
 */
public final class NightFiles {

  private static final DateTimeFormatter MONTH =
      DateTimeFormatter.ofPattern("uuuu-MM", Locale.ROOT).withZone(ZoneOffset.UTC);

  private final Path folder;

  public NightFiles(Path home) {
    this.folder = home.resolve("night");
  }

  /** Writes all of it. */
  public void write(NightReport report, int exitCode, Practice practice) throws IOException {
    Files.createDirectories(folder);
    append(report.ended(), NightLog.line(report, exitCode));
    List<String> lines = NightWords.lines(report);
    replace("last.txt", report.ended() + "\n" + String.join("\n", lines) + "\n");
    page(report, lines);
    long free = new UpFront(practice, practice.settings().night()).freeBytes();
    replace("vestibule.prom", NightLog.metrics(report, exitCode, free));
    heartbeat(report.ended(), exitCode);
  }

  /**
   * Tells of a night that a failing machine or a defect ended.
   *
   * @param kind of the failure, without its words
   */
  public void failed(Instant at, String kind, int exitCode) throws IOException {
    Files.createDirectories(folder);
    append(
        at,
        "{\"at\":\""
            + at
            + "\",\"ending\":\"failed\",\"exit\":"
            + exitCode
            + ",\"failure\":\""
            + kind
            + "\"}");
    replace("last.txt", at + "\nThe night failed (" + kind + "). Run it by hand to see why.\n");
    heartbeat(at, exitCode);
  }

  /** Its time says that nights run at all; its text when, and how the last one ended. */
  private void heartbeat(Instant at, int exitCode) throws IOException {
    replace("heartbeat", at + " exit " + exitCode + "\n");
  }

  private void append(Instant at, String line) throws IOException {
    Files.writeString(
        folder.resolve("log-" + MONTH.format(at) + ".jsonl"),
        line + "\n",
        StandardCharsets.UTF_8,
        StandardOpenOption.CREATE,
        StandardOpenOption.APPEND);
  }

  /** Whoever reads it sees the old text or the new one, never half of it. */
  private void replace(String name, String text) throws IOException {
    Path draft = folder.resolve(name + ".part");
    Files.writeString(draft, text, StandardCharsets.UTF_8);
    Files.move(
        draft,
        folder.resolve(name),
        StandardCopyOption.REPLACE_EXISTING,
        StandardCopyOption.ATOMIC_MOVE);
  }

  private void page(NightReport report, List<String> lines) throws IOException {
    List<Card> cards = lines.stream().skip(1).map(NightFiles::card).toList();
    Sheet sheet =
        new Sheet(
            "The last night",
            NightWords.ending(report) + " It ended at " + report.ended() + ".",
            "This page counts; it names no patient.",
            List.of(),
            "",
            List.<Fact>of(),
            List.of(new org.vestibule.flow.look.SheetSection("What was done", "", cards)),
            "\"vestibule waiting\" says what waits, why, and what to do.");
    Outcome<Path> written = SheetFile.write(sheet, folder.resolve("last.html"));
    written.orThrow();
  }

  private static Card card(String line) {
    return new Card(line, null, List.of(), List.of(), List.of());
  }
}
