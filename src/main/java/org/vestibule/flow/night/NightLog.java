package org.vestibule.flow.night;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.vestibule.flow.IngestReport;
import org.vestibule.flow.WaitingPhoto;
import org.vestibule.flow.delivering.DeliveryReport;
import org.vestibule.store.Finding;

/**
 * A night for machines: a line of JSON, and metrics in the Prometheus text format (version 0.0.4,
 * from memory). Both hold counts, kinds and times, and nothing of a patient.
 */
final class NightLog {

  private static final ObjectMapper JSON = new ObjectMapper();

  private NightLog() {}

  /** One line, without its end. */
  static String line(NightReport report, int exitCode) {
    ObjectNode line = JSON.createObjectNode();
    line.put("at", report.ended().toString());
    line.put("began", report.began().toString());
    line.put("ending", report.ending().name().toLowerCase(Locale.ROOT));
    line.put("exit", exitCode);
    counts(report).forEach(line::put);
    ObjectNode kinds = line.putObject("waitingFor");
    report.takenIn().ifPresent(ingest -> reasons(ingest).forEach(kinds::put));
    ObjectNode findings = line.putObject("findingsByKind");
    report.findings().stream()
        .collect(
            Collectors.groupingBy(
                finding -> finding.kind().name(), TreeMap::new, Collectors.counting()))
        .forEach(findings::put);
    return line.toString();
  }

  /** The same as metrics; times in seconds since 1970. */
  static String metrics(NightReport report, int exitCode, long freeBytes) {
    StringBuilder out = new StringBuilder();
    gauge(
        out,
        "last_run_timestamp_seconds",
        "When the last night ended.",
        report.ended().getEpochSecond());
    gauge(
        out,
        "last_run_duration_seconds",
        "How long the last night took.",
        Duration.between(report.began(), report.ended()).toSeconds());
    gauge(out, "last_run_exit_code", "How the last night ended, see docs/operations.md.", exitCode);
    gauge(out, "free_bytes", "Free bytes on the disk of the objects.", freeBytes);
    counts(report)
        .forEach(
            (name, count) ->
                gauge(out, snake(name), "Counted by the last night: " + name + ".", count));
    return out.toString();
  }

  private static void gauge(StringBuilder out, String name, String help, long value) {
    out.append("# HELP vestibule_").append(name).append(' ').append(help).append('\n');
    out.append("# TYPE vestibule_").append(name).append(" gauge\n");
    out.append("vestibule_").append(name).append(' ').append(value).append('\n');
  }

  private static String snake(String name) {
    return name.replaceAll("([A-Z])", "_$1").toLowerCase(Locale.ROOT);
  }

  private static Map<String, Long> counts(NightReport report) {
    Map<String, Long> counts = new TreeMap<>();
    counts.put("verified", (long) report.verified());
    counts.put("findings", report.findings().stream().filter(Finding::asksForAPerson).count());
    counts.put("waiting", (long) report.waiting());
    counts.put("warnings", (long) report.warnings().size());
    report.delivered().ifPresent(delivery -> delivered(delivery, counts));
    report
        .copyMade()
        .ifPresent(
            backup -> {
              counts.put("backupMade", backup.isMade() ? 1L : 0L);
              counts.put("backupObjects", (long) backup.objects());
              counts.put("backupCopied", (long) backup.copied());
              counts.put("backupFindings", (long) backup.findings().size());
            });
    report
        .takenIn()
        .ifPresent(
            ingest -> {
              counts.put("filed", (long) ingest.filed().size());
              counts.put("concerns", (long) ingest.concerns().size());
              counts.put("cards", (long) ingest.cards().size());
              counts.put("knownAlready", (long) ingest.knownAlready());
              counts.put("defects", (long) ingest.defects().size());
              counts.put("leftOut", (long) ingest.leftOut().size());
            });
    return counts;
  }

  private static void delivered(DeliveryReport delivery, Map<String, Long> counts) {
    List<DeliveryReport.OfDestination> all = delivery.destinations();
    counts.put("deliveryConfirmed", all.stream().mapToLong(one -> one.confirmedNow()).sum());
    counts.put("deliveryOpen", all.stream().mapToLong(one -> one.open()).sum());
    counts.put("deliveryDeadEnds", all.stream().mapToLong(one -> one.deadEnds()).sum());
    counts.put("deliveryLeftEarly", all.stream().filter(one -> one.left().isPresent()).count());
    counts.put("sourcesRemoved", (long) delivery.removed());
  }

  private static Map<String, Long> reasons(IngestReport ingest) {
    return ingest.waiting().stream()
        .flatMap(photo -> photo.reasons().stream())
        .collect(
            Collectors.groupingBy(WaitingPhoto.Reason::kind, TreeMap::new, Collectors.counting()));
  }
}
