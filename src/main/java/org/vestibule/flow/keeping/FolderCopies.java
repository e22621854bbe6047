package org.vestibule.flow.keeping;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.vestibule.base.ContentHash;
import org.vestibule.store.Finding;

/**
 * Copies what a home folder holds beside ledger and objects: files that phones have sent by half,
 * copies behind links, and audit messages. Others go on writing meanwhile; each copy is a file as
 * it was when it was read.
 */
final class FolderCopies {

  /** They follow the home folder: a link that was ended leaves no copy in the backup. */
  private static final List<String> FOLLOWED = List.of("uploads", "shares");

  /** Messages are only added, so nothing is taken away. */
  private static final List<String> KEPT = List.of("audit");

  private final Path home;
  private final Path backup;
  private final boolean reread;
  private final List<Finding> findings = new ArrayList<>();

  /**
   * @param reread true if copies that are there already are read again and compared
   */
  FolderCopies(Path home, Path backup, boolean reread) {
    this.home = home;
    this.backup = backup;
    this.reread = reread;
  }

  /** Copies what is new or has changed, and removes what is followed and gone. */
  void copy() throws IOException {
    for (String name : FOLLOWED) {
      remove(name, copy(name));
    }
    for (String name : KEPT) {
      copy(name);
    }
  }

  /** What could not be read. */
  List<Finding> findings() {
    return List.copyOf(findings);
  }

  /** Brings all of them back into a home folder. */
  static void restore(Path backup, Path home) throws IOException {
    List<String> all = new ArrayList<>(FOLLOWED);
    all.addAll(KEPT);
    for (String name : all) {
      for (Path file : files(backup.resolve(name))) {
        SafeCopy.file(file, home.resolve(backup.relativize(file)));
      }
    }
  }

  private Set<Path> copy(String name) throws IOException {
    Set<Path> seen = new HashSet<>();
    for (Path file : files(home.resolve(name))) {
      Path inside = home.relativize(file);
      seen.add(inside);
      copy(file, inside);
    }
    return seen;
  }

  private void copy(Path file, Path inside) throws IOException {
    Path target = backup.resolve(inside);
    try {
      if (!isCopied(file, target)) {
        SafeCopy.file(file, target);
      }
    } catch (NoSuchFileException gone) {
      // Ended, or given its place, since the folder was listed.
    } catch (IOException e) {
      if (isReadable(file)) {
        throw e;
      }
      findings.add(
          new Finding(
              Finding.Kind.DAMAGE,
              "a file in " + inside.getName(0) + " can't be read from the disk",
              "everything else was copied; check the disk"));
    }
  }

  private boolean isCopied(Path file, Path target) throws IOException {
    return Files.isRegularFile(target)
        && Files.size(file) == Files.size(target)
        && Files.getLastModifiedTime(file).compareTo(Files.getLastModifiedTime(target)) <= 0
        && (!reread || ContentHash.of(file).equals(ContentHash.of(target)));
  }

  private static boolean isReadable(Path file) {
    try {
      ContentHash.of(file);
      return true;
    } catch (IOException unreadable) {
      return false;
    }
  }

  private void remove(String name, Set<Path> seen) throws IOException {
    for (Path copy : files(backup.resolve(name))) {
      if (!seen.contains(backup.relativize(copy))) {
        Files.delete(copy);
      }
    }
  }

  private static List<Path> files(Path folder) throws IOException {
    List<Path> all = new ArrayList<>();
    if (!Files.isDirectory(folder)) {
      return all;
    }
    Files.walkFileTree(
        folder,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
            if (attributes.isRegularFile()) {
              all.add(file);
            }
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFileFailed(Path file, IOException e) throws IOException {
            if (e instanceof NoSuchFileException) {
              return FileVisitResult.CONTINUE;
            }
            throw e;
          }
        });
    return all;
  }
}
