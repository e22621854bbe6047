package org.vestibule.flow;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import org.vestibule.assign.Assignment;
import org.vestibule.assign.Assignment.Decided;
import org.vestibule.assign.RollAssigner;
import org.vestibule.base.Outcome;
import org.vestibule.intake.Intake;
import org.vestibule.intake.IntakeRules;
import org.vestibule.intake.Photo;
import org.vestibule.intake.Roll;
import org.vestibule.store.ledger.KeptObject;

/**
 * The program's half of {@code conformance/bench-whole}: lays out homes, takes them in whole or
 * stage by stage, and verifies them, one after another as it is told.
 */
final class IngestBench {

  private static final String INTAKE = "intake: read, SHA-256, facts";
  private static final String LOOK = "first look: decodes, ledger";

  private IngestBench() {}

  /**
   * Reads lines of words separated by tabs and answers each with one line. {@code roll HOME JPEG
   * COUNT ORIENTATION} lays out a home, {@code stages HOME} takes it in on this thread, {@code
   * whole HOME BESIDE} as the command does, {@code verify HOME} reads it again, {@code memory} says
   * the most that heap and process ever took.
   */
  public static void main(String[] arguments) throws IOException {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    for (String line = in.readLine(); line != null; line = in.readLine()) {
      out.println(answer(line.split("\t", -1)));
    }
  }

  private static String answer(String[] words) throws IOException {
    return switch (words[0]) {
      case "roll" -> {
        byte[] jpeg = Files.readAllBytes(Path.of(words[2]));
        BenchRoll.layOut(
            Path.of(words[1]), jpeg, Integer.parseInt(words[3]), Integer.parseInt(words[4]));
        yield "done";
      }
      case "stages" -> stages(Path.of(words[1]));
      case "whole" -> whole(Path.of(words[1]), Integer.parseInt(words[2]));
      case "verify" -> verify(Path.of(words[1]));
      case "memory" -> memory();
      default -> throw new IllegalArgumentException(String.join(" ", words));
    };
  }

  private static Practice open(Path home) throws IOException {
    Settings settings = Settings.defaults(home, TestHome.ZONE);
    return Practice.open(home, settings, TestHome.CLOCK, true).orThrow();
  }

  private static IngestRequest request(Path home, int beside) {
    Path inbox = home.resolve("inbox");
    return new IngestRequest(inbox, inbox.resolve("manifest.csv"), "bench", false, false, beside);
  }

  private static long processCpuNanos() {
    return ProcessHandle.current().info().totalCpuDuration().orElse(Duration.ZERO).toNanos();
  }

  /** Wall and CPU milliseconds of all threads for one photograph, and how many were filed. */
  private static String whole(Path home, int beside) throws IOException {
    long wall = System.nanoTime();
    long cpu = processCpuNanos();
    int filed;
    try (Practice practice = open(home)) {
      filed = Ingest.run(practice, request(home, beside), Progress.NONE).orThrow().filed().size();
    }
    return String.format(
        Locale.ROOT,
        "wall=%.3f\tcpu=%.3f\tfiled=%d",
        (System.nanoTime() - wall) / 1e6 / filed,
        (processCpuNanos() - cpu) / 1e6 / filed,
        filed);
  }

  /** What {@link Ingest} does, by the same classes in the same order, each timed. */
  private static String stages(Path home) throws IOException {
    StageTimes times = new StageTimes();
    try (Practice practice = open(home)) {
      FirstSights sights = new FirstSights();
      CardsOfRoll cards = new CardsOfRoll(practice, sights, true);
      Roll roll =
          times.of(
              INTAKE,
              () ->
                  Intake.read(
                      home.resolve("inbox"),
                      IntakeRules.DEFAULT.withoutSettling(),
                      practice.clock(),
                      (photo, bytes, before, of) ->
                          times.during(LOOK, () -> cards.arrived(photo, bytes, Progress.NONE))));
      times.without(INTAKE, LOOK);
      RollAssigner assigner =
          times.of(
              "lists and sorting",
              () ->
                  new Lists(practice)
                      .forRoll(request(home, 0), roll, () -> cards.gather(roll), new Tally())
                      .orThrow());
      Filer filer = new Filer(practice);
      ShotVersions versions = new ShotVersions(practice);
      for (Photo photo : roll.photos()) {
        times.of("lists and sorting", () -> versions.filed(photo.arrival().hash(), photo.facts()));
        Assignment assignment = times.of("assign", () -> assigner.assign(photo, List.of()));
        if (!(assignment instanceof Decided decided)) {
          throw new IllegalStateException("a photograph that should be filed: " + assignment);
        }
        file(times, filer, photo, decided, sights);
      }
      times.of("index", () -> practice.store().followIndex());
      return times.words(roll.photos().size());
    }
  }

  private static void file(
      StageTimes times, Filer filer, Photo photo, Decided decided, FirstSights sights)
      throws IOException {
    byte[] bytes = times.of("read again, SHA-256", () -> sights.bytes(photo).orThrow());
    Picture picture =
        Picture.ofFile(photo.arrival().hash(), photo.arrival().shownName(), photo.facts(), bytes)
            .seen(sights.of(photo.arrival().hash()));
    Filer.Task task =
        times.of(
            "ledger: intent",
            () -> filer.begin(picture, decided.decision(), decided.laid(), "ingest", Why.NOTHING));
    Filer.Made made = times.of("encode: transcode, data set", () -> filer.make(task).orThrow());
    times.of("write, fsync, read back", () -> filer.write(Outcome.done(made)));
    Filer.Proved proved = times.of("proof", () -> filer.prove(made).orThrow());
    times.of("ledger: kept, advice", () -> filer.keep(proved));
  }

  /** Wall and CPU milliseconds, megabytes read and findings that are serious. */
  private static String verify(Path home) throws IOException {
    try (Practice practice = open(home)) {
      long bytes = practice.store().ledger().kept().all().mapToLong(KeptObject::sizeBytes).sum();
      long wall = System.nanoTime();
      long cpu = processCpuNanos();
      long serious = Verify.run(practice).stream().filter(finding -> finding.isSerious()).count();
      return String.format(
          Locale.ROOT,
          "wall=%.3f\tcpu=%.3f\tmb=%.3f\tserious=%d",
          (System.nanoTime() - wall) / 1e6,
          (processCpuNanos() - cpu) / 1e6,
          bytes / 1e6,
          serious);
    }
  }

  private static String memory() throws IOException {
    long heap =
        ManagementFactory.getMemoryPoolMXBeans().stream()
            .filter(pool -> pool.getType() == MemoryType.HEAP)
            .mapToLong(pool -> peak(pool))
            .sum();
    Path status = Path.of("/proc/self/status");
    String process =
        Files.exists(status)
            ? Files.readAllLines(status).stream()
                .filter(line -> line.startsWith("VmHWM"))
                .map(line -> line.replaceAll("[^0-9]", ""))
                .findFirst()
                .orElse("0")
            : "0";
    return String.format(
        Locale.ROOT,
        "heap=%.1f\tprocess=%.1f\tlimit=%.1f",
        heap / 1048576.0,
        Long.parseLong(process) / 1024.0,
        Runtime.getRuntime().maxMemory() / 1048576.0);
  }

  private static long peak(MemoryPoolMXBean pool) {
    return pool.getPeakUsage().getUsed();
  }
}
