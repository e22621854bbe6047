package org.vestibule.intake;

import java.util.Optional;
import java.util.Set;

/** Files that are known by their names alone and never opened. */
final class NameRules {

  private static final Set<String> SIDECARS = Set.of("aae", "xmp", "json", "thm");
  private static final Set<String> LISTS = Set.of("csv", "tsv");

  private NameRules() {}

  static Optional<LeftOut> leaveOut(FoundFile file, Neighbours neighbours) {
    if (SystemFiles.isFile(FileNames.last(file.name()))) {
      return Optional.of(SystemFiles.leftOut(file.name()));
    }
    String extension = FileNames.extension(file.name());
    if (SIDECARS.contains(extension)) {
      return Optional.of(
          file.leave(
              LeftOutKind.SIDECAR,
              extension.equals("aae")
                  ? "it notes edits made on the phone; the picture beside it doesn't hold them"
                  : "it is a companion file (." + extension + ") without a picture",
              "nothing needs to be done"));
    }
    if (LISTS.contains(extension)) {
      return Optional.of(
          file.leave(
              LeftOutKind.LIST,
              "it is a list",
              "manifests and visit lists are read when photographs are assigned"));
    }
    return Optional.empty();
  }
}
