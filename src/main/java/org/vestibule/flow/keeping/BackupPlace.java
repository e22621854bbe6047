package org.vestibule.flow.keeping;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;

/**
 * Says whether a backup can be made where nobody looks on. A disk that is not connected is often an
 * empty folder on the computer's own one: a backup that begins there by itself protects nothing.
 */
public final class BackupPlace {

  private BackupPlace() {}

  /** Refuses a folder in which no backup was begun by hand, and a secret's folder that is gone. */
  public static Outcome<Path> ready(Path to, @Nullable Path secretTo) throws IOException {
    if (BackupText.mark(to).isEmpty()) {
      return Outcome.refused(
          "there is no backup in the folder for the night's backup: the disk may not be connected,"
              + " or no backup was begun there yet",
          "connect the disk; the first time, run \"vestibule backup --to\" by hand");
    }
    if (secretTo != null && !Files.isDirectory(secretTo)) {
      return Outcome.refused(
          "the folder for the copy of the secret is not there: the disk may not be connected",
          "connect the disk; the first time, run \"vestibule backup\" with --secret-to by hand");
    }
    return Outcome.done(to);
  }
}
