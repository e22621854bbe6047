package org.vestibule.flow.keeping;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * Where damaged files go instead of being deleted: somebody may still get something out of them.
 */
final class SetAside {

  static final String FOLDER = "set-aside";

  private static final DateTimeFormatter NAME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH-mm-ss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private SetAside() {}

  /** A folder in the home folder that is not there yet, named by the time. */
  static Path folder(Path home, Clock clock) {
    String name = NAME.format(clock.instant());
    Path folder = home.resolve(FOLDER).resolve(name);
    for (int more = 2; Files.exists(folder); more++) {
      folder = home.resolve(FOLDER).resolve(name + "-" + more);
    }
    return folder;
  }
}
