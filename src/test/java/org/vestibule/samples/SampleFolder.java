package org.vestibule.samples;

import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The folder {@code samples/} of the source tree, for tests that measure against it. */
public final class SampleFolder {

  private static final Path FOLDER = Path.of("samples");

  private SampleFolder() {}

  /** The roll of photographs. */
  public static Path roll() {
    return FOLDER.resolve("roll");
  }

  public static Path visits() {
    return FOLDER.resolve("visits.csv");
  }

  public static Path manifest() {
    return FOLDER.resolve("manifest.csv");
  }

  /** Lays roll, manifest and visits into a new home folder, and names its inbox. */
  public static Path layOut(Path home) throws IOException {
    Path inbox = Files.createDirectories(home.resolve("inbox"));
    try (Stream<Path> files = Files.list(roll())) {
      for (Path file : files.toList()) {
        Files.copy(file, inbox.resolve(String.valueOf(file.getFileName())));
      }
    }
    Files.copy(manifest(), inbox.resolve("manifest.csv"));
    Files.copy(visits(), home.resolve("visits.csv"));
    return inbox;
  }

  /** What should become of each file: file, expected, view, patient_orientation, reason. */
  public static List<Map<String, String>> expected() throws IOException {
    return table(FOLDER.resolve("expected.csv"));
  }

  /** The size of everything in it, in bytes. */
  static long sizeBytes() throws IOException {
    long size = 0;
    try (Stream<Path> files = Files.walk(FOLDER)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        size += Files.size(file);
      }
    }
    return size;
  }

  static List<Map<String, String>> table(Path file) throws IOException {
    CsvSchema schema = CsvSchema.emptySchema().withHeader();
    try (MappingIterator<Map<String, String>> rows =
        new CsvMapper()
            .readerForMapOf(String.class)
            .with(schema)
            .readValues(Files.readString(file, StandardCharsets.UTF_8))) {
      return rows.readAll();
    }
  }
}
