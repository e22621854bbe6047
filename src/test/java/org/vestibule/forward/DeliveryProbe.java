package org.vestibule.forward;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.store.ledger.DeliveryRow;
import org.vestibule.store.ledger.DeliveryState;

/**
 * Delivers six photographs to the archive on a port and prints what the ledger then says of each;
 * {@code conformance/delivery} compares that with what the archive did.
 */
final class DeliveryProbe {

  private static final int PHOTOGRAPHS = 6;
  private static final Duration REPORT_WAIT = Duration.ofSeconds(2);
  private static final Duration LONGEST = Duration.ofSeconds(30);

  private DeliveryProbe() {}

  /** Arguments: the archive's port, ours for reports, commitment or query, an empty folder. */
  public static void main(String[] arguments) throws Exception {
    int archivePort = Integer.parseInt(arguments[0]);
    int reportPort = Integer.parseInt(arguments[1]);
    DestinationRules destination =
        new DestinationRules(
            "archive",
            true,
            new DestinationRules.Dicom(
                "127.0.0.1", archivePort, "ARCHIVE", "VESTIBULE", Optional.empty()),
            DestinationRules.Confirm.valueOf(arguments[2]),
            REPORT_WAIT,
            Duration.ofSeconds(20));
    ForwardRules.ReportPort port =
        new ForwardRules.ReportPort(reportPort, "VESTIBULE", Optional.empty());
    ForwardRules rules =
        new ForwardRules(
            List.of(destination),
            Duration.ofSeconds(1),
            Duration.ofSeconds(1),
            2,
            Duration.ofHours(1),
            Optional.of(port),
            ForwardRules.SourceRemoval.NEVER);
    Path folder = Files.createDirectories(Path.of(arguments[3]));
    Clock clock = Clock.systemUTC();
    Random random = new Random(1);
    try (FiledObjects filed = new FiledObjects(folder, clock);
        ReportDoor door =
            ReportDoor.open(rules, port, filed.ledger, "probe", clock, random, System.out::println)
                .orThrow()) {
      System.out.println("DOOR " + door.port());
      for (int i = 0; i < PHOTOGRAPHS; i++) {
        System.out.println("FILED " + filed.file("photo" + i, "P1"));
      }
      Destination to =
          new Destination(
              destination,
              rules,
              DicomLine.of(destination, clock).orThrow(),
              filed.ledger,
              filed.objects,
              filed::note,
              "probe");
      deliver(to, filed, clock, random);
    }
  }

  private static void deliver(Destination to, FiledObjects filed, Clock clock, Random random)
      throws IOException, InterruptedException {
    Instant end = clock.instant().plus(LONGEST);
    while (clock.instant().isBefore(end) && open(filed)) {
      Courier.deliver(to, clock, random, end)
          .map(Refused::sentence)
          .ifPresent(words -> System.out.println("REFUSED " + words));
      Thread.sleep(500);
    }
    for (int i = 0; i < PHOTOGRAPHS; i++) {
      DeliveryRow row = row(filed, i);
      System.out.println(
          row.state() + " " + row.sopUid() + " attempts " + row.attempts() + ": " + row.words());
    }
  }

  private static boolean open(FiledObjects filed) {
    for (int i = 0; i < PHOTOGRAPHS; i++) {
      DeliveryRow row = row(filed, i);
      boolean settled =
          row == null
              ? false
              : row.state() == DeliveryState.CONFIRMED || row.state() == DeliveryState.REFUSED;
      if (!settled) {
        return true;
      }
    }
    return false;
  }

  private static DeliveryRow row(FiledObjects filed, int number) {
    List<DeliveryRow> rows = filed.ledger.deliveries().of(FiledObjects.hash("photo" + number));
    return rows.isEmpty() ? null : rows.get(rows.size() - 1);
  }
}
