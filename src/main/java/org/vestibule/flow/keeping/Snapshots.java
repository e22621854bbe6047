package org.vestibule.flow.keeping;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.vestibule.base.Synced;

/** The moments that a backup folder holds, each in a folder named by its time. */
final class Snapshots {

  static final String LEDGER = "ledger.sqlite";
  static final String SETTINGS = "vestibule.toml";
  static final String VISITS = "visits.csv";
  static final String VIEWS = "views.csv";

  private static final DateTimeFormatter NAME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH-mm-ss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);
  private static final String SHAPE = "[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}-[0-9]{2}-[0-9]{2}Z.*";
  private static final int MONTH_DIGITS = 7;

  private final Path folder;

  /** The snapshots of a backup folder. */
  Snapshots(Path backup) {
    this.folder = backup.resolve("snapshots");
  }

  /** Names of the finished ones, the oldest first. */
  List<String> names() throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> all = Files.list(folder)) {
      return all.map(path -> String.valueOf(path.getFileName()))
          .filter(name -> name.matches(SHAPE) && !name.endsWith(SafeCopy.PART))
          .sorted()
          .toList();
    }
  }

  Path of(String name) {
    return folder.resolve(name);
  }

  /** A folder to fill, for a snapshot of this moment; it counts when {@link #finish} named it. */
  Path begin(Instant at) throws IOException {
    String name = NAME.format(at);
    for (int more = 2; Files.exists(of(name)); more++) {
      name = NAME.format(at) + "-" + more;
    }
    Path part = of(name + SafeCopy.PART);
    remove(part);
    return Files.createDirectories(part);
  }

  /** Gives a filled folder its name, which no other has; the name. */
  String finish(Path part) throws IOException {
    String name = String.valueOf(part.getFileName());
    String finished = name.substring(0, name.length() - SafeCopy.PART.length());
    Synced.folder(part);
    SafeCopy.rename(part, of(finished));
    Synced.folder(folder);
    return finished;
  }

  /** Removes what interrupted backups left. Only for the holder of the backup's lock. */
  void clearInterrupted() throws IOException {
    if (Files.isDirectory(folder)) {
      List<Path> parts;
      try (Stream<Path> all = Files.list(folder)) {
        parts = all.filter(path -> path.toString().endsWith(SafeCopy.PART)).toList();
      }
      for (Path part : parts) {
        remove(part);
      }
    }
  }

  /** Removes the older ones but the newest so many, and but the last one of each month. */
  List<String> prune(int keep) throws IOException {
    List<String> newestFirst = new ArrayList<>(names());
    newestFirst.sort(Comparator.reverseOrder());
    Set<String> months = new HashSet<>();
    List<String> removed = new ArrayList<>();
    for (int at = 0; at < newestFirst.size(); at++) {
      String name = newestFirst.get(at);
      boolean lastOfMonth = months.add(name.substring(0, MONTH_DIGITS));
      if (at >= keep && !lastOfMonth) {
        remove(of(name));
        removed.add(name);
      }
    }
    return removed;
  }

  /** Removes a snapshot's folder; it holds files only. */
  static void remove(Path snapshot) throws IOException {
    if (!Files.isDirectory(snapshot)) {
      return;
    }
    List<Path> files;
    try (Stream<Path> all = Files.list(snapshot)) {
      files = all.toList();
    }
    for (Path file : files) {
      Files.delete(file);
    }
    Files.delete(snapshot);
  }
}
