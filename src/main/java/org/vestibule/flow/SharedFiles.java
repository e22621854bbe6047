package org.vestibule.flow;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.vestibule.base.Outcome;
import org.vestibule.store.ledger.ShareRow;

/** Where the copies lie that links show: a folder for each. */
final class SharedFiles {

  private final Path folder;

  SharedFiles(Path folder) {
    this.folder = folder;
  }

  /** The folder for a link's copies, which is not there yet. */
  Path folder(String mark) throws IOException {
    return Files.createDirectories(folder).resolve(mark);
  }

  /** A copy's JPEG file. */
  Outcome<byte[]> picture(String mark, String name) throws IOException {
    Path file = folder.resolve(mark).resolve("jpeg").resolve(name + ".jpg");
    return Files.isRegularFile(file)
        ? Outcome.done(Files.readAllBytes(file))
        : Outcome.refused(Outcome.Kind.DAMAGE, "the copy is gone", "end the link and make another");
  }

  /** Removes the copies of links that show nothing any more. */
  void tidy(List<ShareRow> open) throws IOException {
    if (!Files.isDirectory(folder)) {
      return;
    }
    Set<String> needed = open.stream().map(ShareRow::mark).collect(Collectors.toSet());
    List<Path> old;
    try (Stream<Path> all = Files.list(folder)) {
      old =
          all.filter(one -> String.valueOf(one.getFileName()).matches("[0-9a-f]{64}"))
              .filter(one -> !needed.contains(String.valueOf(one.getFileName())))
              .toList();
    }
    for (Path one : old) {
      remove(one);
    }
  }

  private static void remove(Path root) throws IOException {
    List<Path> all;
    try (Stream<Path> walk = Files.walk(root)) {
      all = walk.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path path : all) {
      Files.deleteIfExists(path);
    }
  }
}
