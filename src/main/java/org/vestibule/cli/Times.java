package org.vestibule.cli;

import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Times as people read them. */
final class Times {

  private static final DateTimeFormatter MINUTES =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  private Times() {}

  static String words(LocalDateTime time) {
    return MINUTES.format(time);
  }
}
