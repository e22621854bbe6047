package org.vestibule.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Map;

/**
 * What a command finds around it.
 *
 * @param console where people read
 * @param environment the environment's variables
 * @param folder the folder the command was called in
 * @param clock the machine's clock
 * @param zone the machine's time zone
 */
record Surroundings(
    Console console, Map<String, String> environment, Path folder, Clock clock, ZoneId zone) {

  Surroundings {
    environment = Map.copyOf(environment);
  }

  /**
   * A path as the person wrote it, from the folder the command was called in. An empty one, such as
   * a script's unset variable leaves, is refused: it must not mean this folder.
   */
  Path path(String written) {
    if (written.isBlank()) {
      throw new InvalidPathException(written, FailureWords.EMPTY_NAME);
    }
    return folder.resolve(written);
  }
}
