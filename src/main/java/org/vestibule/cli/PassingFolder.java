package org.vestibule.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** A folder for the time of one command that is to leave nothing behind. */
record PassingFolder(Path path) implements AutoCloseable {

  static PassingFolder make() throws IOException {
    return new PassingFolder(Files.createTempDirectory("vestibule-"));
  }

  @Override
  public void close() throws IOException {
    List<Path> all;
    try (Stream<Path> walk = Files.walk(path)) {
      all = walk.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path file : all) {
      Files.delete(file);
    }
  }
}
