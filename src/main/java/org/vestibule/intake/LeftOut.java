package org.vestibule.intake;

import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;

/**
 * A file, or a folder, that did not become a photograph. Nothing in the folder goes unmentioned.
 *
 * @param name path below the folder that was read, with forward slashes; use {@link #shownName()}
 *     in messages
 * @param kind what it is
 * @param reason what was found and what was expected
 * @param advice what a person can do, or what happens next
 * @param hash SHA-256 of its bytes, or null if they were not read
 * @param facts what its Exif data says, where it could be read although the picture can't be taken
 */
public record LeftOut(
    String name,
    LeftOutKind kind,
    String reason,
    String advice,
    @Nullable ContentHash hash,
    @Nullable CaptureFacts facts) {

  /** A left-out file of which no capture facts are known. */
  public LeftOut(
      String name, LeftOutKind kind, String reason, String advice, @Nullable ContentHash hash) {
    this(name, kind, reason, advice, hash, null);
  }

  /** The name with control and direction-changing characters escaped. */
  public String shownName() {
    return FileNames.shown(name);
  }

  /** Name, reason and advice as one line. */
  public String sentence() {
    return shownName() + ": " + reason + "; " + advice;
  }
}
