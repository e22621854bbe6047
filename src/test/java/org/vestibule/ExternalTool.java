package org.vestibule;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/**
 * An independent program that checks our work. Where it is missing, a contributor's test is skipped
 * and says so; in CI ({@code VESTIBULE_CI=1}) the test fails.
 */
public final class ExternalTool {

  private static final long LIMIT_SECONDS = 120;

  /** What a run printed and how it ended. */
  public record Result(int exitCode, byte[] output, String errors) {
    public String text() {
      return new String(output, StandardCharsets.UTF_8);
    }
  }

  private final Path program;

  private ExternalTool(Path program) {
    this.program = program;
  }

  /** The program of this name from the system's folders, or the end of the calling test. */
  public static ExternalTool require(String name, String debianPackage) {
    Optional<Path> found =
        List.of("/usr/bin", "/usr/local/bin").stream()
            .map(folder -> Path.of(folder, name))
            .filter(Files::isExecutable)
            .findFirst();
    if (found.isPresent()) {
      return new ExternalTool(found.get());
    }
    String message =
        "SKIPPED: " + name + " is missing; install the Debian package " + debianPackage;
    if ("1".equals(System.getenv("VESTIBULE_CI"))) {
      throw new AssertionError(message + " (in CI a missing checker fails the run)");
    }
    System.err.println(message);
    Assumptions.abort(message);
    throw new IllegalStateException("an aborted test went on");
  }

  /** Starts the program and leaves it running; what it prints is dropped. */
  public Process start(String... arguments) throws IOException {
    List<String> command = new ArrayList<>(List.of(program.toString()));
    command.addAll(List.of(arguments));
    return new ProcessBuilder(command)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .redirectError(ProcessBuilder.Redirect.DISCARD)
        .start();
  }

  /** Runs the program with no input. */
  public Result run(String... arguments) throws IOException, InterruptedException {
    return run(new byte[0], arguments);
  }

  /** Runs the program with these bytes as its standard input. */
  public Result run(byte[] input, String... arguments) throws IOException, InterruptedException {
    Path in = Files.createTempFile("tool", ".in");
    Path out = Files.createTempFile("tool", ".out");
    Path err = Files.createTempFile("tool", ".err");
    try {
      Files.write(in, input);
      List<String> command = new ArrayList<>(List.of(program.toString()));
      command.addAll(List.of(arguments));
      Process process =
          new ProcessBuilder(command)
              .redirectInput(in.toFile())
              .redirectOutput(out.toFile())
              .redirectError(err.toFile())
              .start();
      if (!process.waitFor(LIMIT_SECONDS, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw new AssertionError(program.getFileName() + " did not end");
      }
      try (InputStream bytes = Files.newInputStream(out)) {
        return new Result(
            process.exitValue(),
            bytes.readAllBytes(),
            new String(Files.readAllBytes(err), StandardCharsets.UTF_8));
      }
    } finally {
      Files.deleteIfExists(in);
      Files.deleteIfExists(out);
      Files.deleteIfExists(err);
    }
  }
}
