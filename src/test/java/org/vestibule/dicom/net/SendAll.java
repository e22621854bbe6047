package org.vestibule.dicom.net;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Sends every file of a folder to an archive on this computer over one association and prints what
 * the sending itself cost, without the start of the JVM; for {@code conformance/bench-delivery}.
 */
final class SendAll {

  private static final double NANOS = 1e9;

  private SendAll() {}

  /** Arguments: the archive's port and the folder. */
  public static void main(String[] arguments) throws Exception {
    RemoteEntity remote =
        new RemoteEntity(
            "127.0.0.1",
            Integer.parseInt(arguments[0]),
            new AeTitle("ARCHIVE"),
            new AeTitle("VESTIBULE"),
            Optional.empty(),
            Timeouts.DEFAULT);
    long cpuBefore = cpuNanos();
    long wallBefore = System.nanoTime();
    List<Path> paths;
    try (Stream<Path> all = Files.list(Path.of(arguments[1]))) {
      paths = all.sorted().toList();
    }
    List<StoredFile> files = paths.stream().map(path -> StoredFile.of(path).orThrow()).toList();
    List<Offer> offers = List.of(Offer.of(files.get(0)));
    int stored = 0;
    try (Association association = Association.open(remote, offers).orThrow()) {
      for (StoredFile file : files) {
        stored += association.store(file).orThrow().kind() == Answer.Kind.SUCCESS ? 1 : 0;
      }
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
}
