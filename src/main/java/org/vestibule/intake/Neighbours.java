package org.vestibule.intake;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What else lies in the folder: companions are known by the name they share. */
final class Neighbours {

  private static final Set<String> STILLS =
      Set.of("jpg", "jpeg", "jpe", "heic", "heif", "hif", "avif", "dng");

  /** Names that programs give a second file of one name (common practice, no source). */
  private static final Pattern CONFLICT =
      Pattern.compile(
          "^(.+?)(?: ?\\(\\d{1,3}\\)| ?\\([^()]*conflict[^()]*\\)|[ -_]conflict[^/]*| ?-? ?copy(?: \\d+)?)$",
          Pattern.CASE_INSENSITIVE | Pattern.DOTALL);

  private final Set<String> keys;

  private Neighbours(Set<String> keys) {
    this.keys = keys;
  }

  static Neighbours of(List<FoundFile> files) {
    Set<String> keys = new HashSet<>();
    files.forEach(file -> keys.add(FileNames.key(file.name())));
    return new Neighbours(keys);
  }

  /** True if a file of this stem and extension lies beside it. */
  boolean has(String stem, String extension) {
    return keys.contains(FileNames.key(stem + "." + extension));
  }

  /** True if another file, a still picture, has the same stem. */
  boolean hasStill(String name) {
    return !STILLS.contains(FileNames.extension(name))
        && STILLS.stream().anyMatch(extension -> has(FileNames.stem(name), extension));
  }

  /** True if a note of edits made on the phone belongs to this picture. */
  boolean hasEditSidecar(String name) {
    String stem = FileNames.stem(name);
    return has(stem, "aae") || has(SameShot.originalStem(name), "aae");
  }

  /** The name that a conflict copy is a copy of, if that file is here too. */
  Optional<String> copyOf(String name) {
    Matcher conflict = CONFLICT.matcher(FileNames.last(FileNames.stem(name)));
    if (!conflict.matches()) {
      return Optional.empty();
    }
    String original = FileNames.folder(name) + conflict.group(1) + "." + FileNames.extension(name);
    return keys.contains(FileNames.key(original)) ? Optional.of(original) : Optional.empty();
  }
}
