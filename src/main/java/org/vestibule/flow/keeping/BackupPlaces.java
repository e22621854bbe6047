package org.vestibule.flow.keeping;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.flow.Practice;
import org.vestibule.store.SecretFile;

/** Says whether a backup and its secret may go where somebody wants them. */
final class BackupPlaces {

  private BackupPlaces() {}

  /** Refuses folders that lie in one another, or hold something else. */
  static Outcome<Path> require(Practice practice, Path to, @Nullable Path secretTo)
      throws IOException {
    Path home = real(practice.home());
    Path target = real(to);
    for (Path own : List.of(home, real(practice.settings().objects()))) {
      if (target.startsWith(own)) {
        return Outcome.refused(
            "the backup would lie inside the practice's own folders",
            "name a folder on another disk; a copy on the same disk dies with it");
      }
      if (own.startsWith(target)) {
        return Outcome.refused(
            "the practice's own folders lie inside the folder that the backup should go to",
            "name a folder apart, on another disk");
      }
    }
    if (secretTo != null) {
      Path secret = real(secretTo);
      if (secret.startsWith(target) || target.startsWith(secret)) {
        return Outcome.refused(
            "the secret would lie in the same place as the backup",
            "name another folder, best on another disk: whoever finds both holds everything");
      }
      if (secret.startsWith(home)) {
        return Outcome.refused(
            "the copy of the secret would lie in the home folder, where the secret is already",
            "name a folder on another disk");
      }
    }
    return ours(to, practice.home().resolve(SecretFile.NAME));
  }

  private static Outcome<Path> ours(Path to, Path secret) throws IOException {
    Optional<String> mark = BackupText.mark(to);
    if (mark.isPresent()) {
      return SecretFile.mark(secret)
          .then(
              own ->
                  own.equals(mark.get())
                      ? Outcome.done(to)
                      : Outcome.refused(
                          "the folder holds the backup of another practice",
                          "name another folder; nothing was changed"));
    }
    if (Files.isDirectory(to) && holdsOthers(to)) {
      return Outcome.refused(
          "the folder for the backup holds other things, and no backup",
          "name a new or an empty folder; nothing was changed");
    }
    return Outcome.done(to);
  }

  /** A backup that died before it said what the folder is left nothing but a draft of that. */
  private static boolean holdsOthers(Path folder) throws IOException {
    try (Stream<Path> inside = Files.list(folder)) {
      return inside.anyMatch(file -> !BackupText.isDraft(file));
    }
  }

  static boolean isEmpty(Path folder) throws IOException {
    try (Stream<Path> inside = Files.list(folder)) {
      return inside.findAny().isEmpty();
    }
  }

  /** The place with links followed, as far as it is there already. */
  static Path real(Path path) throws IOException {
    Path absolute = path.toAbsolutePath().normalize();
    Path there = absolute;
    while (!Files.exists(there)) {
      Path parent = there.getParent();
      if (parent == null) {
        return absolute;
      }
      there = parent;
    }
    return there.toRealPath().resolve(there.relativize(absolute)).normalize();
  }
}
