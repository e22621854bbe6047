package org.vestibule.store.objects;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.vestibule.base.ContentHash;

/** Says where an object lies below the objects folder, and which object lies at a place. */
final class ObjectPaths {

  static final String INTERRUPTED = ".part";

  private static final String SUFFIX = ".dcm";
  private static final Pattern TEMPORARY =
      Pattern.compile("(.+" + Pattern.quote(SUFFIX) + ")-[0-9]+" + Pattern.quote(INTERRUPTED));
  private static final Pattern UID = Pattern.compile("(0|[1-9][0-9]*)(\\.(0|[1-9][0-9]*))+");
  private static final int LONGEST_UID = 64;

  private final Path root;

  ObjectPaths(Path root) {
    this.root = root;
  }

  Path of(String uid) {
    requireUid(uid);
    return root.resolve(folder(uid)).resolve(uid + SUFFIX);
  }

  private static void requireUid(String uid) {
    if (uid.length() > LONGEST_UID || !UID.matcher(uid).matches()) {
      throw new IllegalArgumentException(
          "a UID has at most 64 characters, numbers and dots only, but this has "
              + uid.length()
              + " characters");
    }
  }

  private static String folder(String uid) {
    return ContentHash.of(uid.getBytes(StandardCharsets.US_ASCII)).hex().substring(0, 2);
  }

  /** The UID of the object at this place, or empty if nothing of ours should lie there. */
  Optional<String> uidAt(Path file) {
    String name = String.valueOf(file.getFileName());
    if (!name.endsWith(SUFFIX)) {
      return Optional.empty();
    }
    String uid = name.substring(0, name.length() - SUFFIX.length());
    boolean ours = uid.length() <= LONGEST_UID && UID.matcher(uid).matches();
    return ours && of(uid).equals(file) ? Optional.of(uid) : Optional.empty();
  }

  /** True if an interrupted write of ours left this; a person's own file is never taken for one. */
  boolean isInterrupted(Path file) {
    Matcher name = TEMPORARY.matcher(String.valueOf(file.getFileName()));
    return name.matches() && uidAt(file.resolveSibling(name.group(1))).isPresent();
  }

  /** The place below the objects folder, with forward slashes. */
  String below(Path file) {
    return root.relativize(file).toString().replace('\\', '/');
  }
}
