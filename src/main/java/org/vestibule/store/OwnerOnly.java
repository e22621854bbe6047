package org.vestibule.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.AclEntry;
import java.nio.file.attribute.AclEntryPermission;
import java.nio.file.attribute.AclEntryType;
import java.nio.file.attribute.AclFileAttributeView;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Makes files that their owner alone can read, and tells which others can. */
final class OwnerOnly {

  private static final Set<PosixFilePermission> FILE = PosixFilePermissions.fromString("rw-------");
  private static final Set<PosixFilePermission> FOLDER =
      PosixFilePermissions.fromString("rwx------");
  private static final Set<PosixFilePermission> OTHERS =
      PosixFilePermissions.fromString("---rwxrwx");

  private OwnerOnly() {}

  static void createFile(Path file) throws IOException {
    if (isPosix(parentOf(file))) {
      Files.createFile(file, PosixFilePermissions.asFileAttribute(FILE));
    } else {
      Files.createFile(file);
      restrictAcl(file);
    }
  }

  static void createFolder(Path folder) throws IOException {
    if (Files.isDirectory(folder)) {
      return;
    }
    Path parent = parentOf(folder);
    Files.createDirectories(parent);
    if (isPosix(parent)) {
      Files.createDirectory(folder, PosixFilePermissions.asFileAttribute(FOLDER));
    } else {
      Files.createDirectory(folder);
      restrictAcl(folder);
    }
  }

  private static Path parentOf(Path file) {
    Path parent = file.toAbsolutePath().getParent();
    return parent == null ? file.toAbsolutePath() : parent;
  }

  private static boolean isPosix(Path folder) {
    return Files.getFileAttributeView(folder, PosixFileAttributeView.class) != null;
  }

  private static void restrictAcl(Path file) throws IOException {
    AclFileAttributeView view = Files.getFileAttributeView(file, AclFileAttributeView.class);
    if (view != null) {
      view.setAcl(
          List.of(
              AclEntry.newBuilder()
                  .setType(AclEntryType.ALLOW)
                  .setPrincipal(view.getOwner())
                  .setPermissions(EnumSet.allOf(AclEntryPermission.class))
                  .build()));
    }
  }

  /** True if somebody besides the owner may read or write the file. */
  static boolean isOpenToOthers(Path file) throws IOException {
    if (isPosix(file)) {
      return Files.getPosixFilePermissions(file).stream().anyMatch(OTHERS::contains);
    }
    AclFileAttributeView view = Files.getFileAttributeView(file, AclFileAttributeView.class);
    return view != null
        && view.getAcl().stream()
            .filter(entry -> entry.type() == AclEntryType.ALLOW)
            .filter(entry -> entry.permissions().contains(AclEntryPermission.READ_DATA))
            .anyMatch(entry -> isOrdinary(entry.principal().getName()));
  }

  /** Groups of everybody; the owner, the system and administrators may read the file. */
  private static boolean isOrdinary(String principal) {
    return principal.matches("(?i)(.*\\\\)?(everyone|users|authenticated users|guests)");
  }
}
