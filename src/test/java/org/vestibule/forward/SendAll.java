package org.vestibule.forward;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Stream;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.store.ledger.DeliveryRow;
import org.vestibule.store.ledger.DeliveryState;
import org.vestibule.store.objects.ObjectStore;
import org.vestibule.store.objects.Put;

/**
 * Sends every object of a folder to an archive on this computer as a delivery does ({@link
 * ParcelReader}, {@link DicomLine}, batches as the {@link Courier}'s), without a ledger, and prints
 * what the sending itself cost, without the start of the JVM; for {@code
 * conformance/bench-delivery}.
 */
final class SendAll {

  private static final double NANOS = 1e9;
  private static final int BATCH = 50;
  private static final ContentHash HASH = new ContentHash("0".repeat(64));

  private SendAll() {}

  /** Arguments: the archive's port and the folder, in it files called by their UID. */
  public static void main(String[] arguments) throws Exception {
    DestinationRules rules =
        new DestinationRules(
            "archive",
            true,
            new DestinationRules.Dicom(
                "127.0.0.1",
                Integer.parseInt(arguments[0]),
                "ARCHIVE",
                "VESTIBULE",
                Optional.empty()),
            DestinationRules.Confirm.QUERY,
            Duration.ofMinutes(10),
            Duration.ofSeconds(60));
    long cpuBefore = cpuNanos();
    long wallBefore = System.nanoTime();
    Folder objects = new Folder(Path.of(arguments[1]));
    ParcelReader reader = new ParcelReader(objects);
    DicomLine line = DicomLine.of(rules, Clock.systemUTC()).orThrow();
    int stored = 0;
    ArchiveSession session = null;
    List<String> uids = objects.list();
    for (int at = 0; at < uids.size(); at += BATCH) {
      List<Parcel> batch = new ArrayList<>();
      Set<Archive.Form> forms = new HashSet<>();
      for (String uid : uids.subList(at, Math.min(uids.size(), at + BATCH))) {
        Parcel parcel = reader.read(row(uid), uid).orThrow();
        forms.add(parcel.form());
        batch.add(parcel);
      }
      if (session == null) {
        session = line.open(forms, report -> false).orThrow();
      }
      for (Parcel parcel : batch) {
        stored += session.store(parcel) instanceof StoreAnswer.Accepted ? 1 : 0;
      }
    }
    if (session != null) {
      session.close();
    }
    double wall = (System.nanoTime() - wallBefore) / NANOS;
    double cpu = (cpuNanos() - cpuBefore) / NANOS;
    System.out.println(stored);
    System.out.println(wall);
    System.out.println(cpu);
  }

  /** User and system time of the whole process, all threads of the JVM among them. */
  private static long cpuNanos() {
    return ProcessHandle.current().info().totalCpuDuration().orElse(Duration.ZERO).toNanos();
  }

  private static DeliveryRow row(String uid) {
    return new DeliveryRow(
        1,
        "archive",
        false,
        HASH,
        1,
        uid,
        null,
        "2.25.71",
        "2.25.72",
        null,
        DeliveryState.WAITING,
        false,
        false,
        0,
        0,
        null,
        null,
        "",
        Instant.EPOCH);
  }

  private record Folder(Path folder) implements ObjectStore {

    @Override
    public Outcome<Put> putIfAbsent(String uid, byte[] bytes) {
      throw new UnsupportedOperationException();
    }

    @Override
    public Optional<byte[]> get(String uid) throws IOException {
      return Optional.of(Files.readAllBytes(path(uid).orElseThrow()));
    }

    @Override
    public Optional<Path> path(String uid) {
      return Optional.of(folder.resolve(uid.concat(".dcm")));
    }

    @Override
    public OptionalLong size(String uid) throws IOException {
      return OptionalLong.of(Files.size(path(uid).orElseThrow()));
    }

    @Override
    public List<String> list() throws IOException {
      try (Stream<Path> files = Files.list(folder)) {
        return files
            .map(file -> file.getFileName().toString())
            .sorted()
            .map(name -> name.substring(0, name.length() - 4))
            .toList();
      }
    }

    @Override
    public List<String> strays() {
      return List.of();
    }

    @Override
    public boolean isInterrupted(String stray) {
      return false;
    }

    @Override
    public int clearInterrupted() {
      return 0;
    }
  }
}
