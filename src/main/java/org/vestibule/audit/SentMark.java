package org.vestibule.audit;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/**
 * How far the syslog server has got the messages: a month's file and the bytes of it. Whatever
 * stands behind it is still to be sent, so that a server that is down loses nothing.
 */
final class SentMark {

  private static final String NAME = "sent";

  /** A place in the files. */
  record Place(String file, long offsetBytes) {
    static final Place BEGINNING = new Place("", 0);
  }

  private final Path file;

  SentMark(Path folder) {
    this.file = folder.resolve(NAME);
  }

  Place read() throws IOException {
    if (!Files.exists(file)) {
      return Place.BEGINNING;
    }
    String[] words = Files.readString(file, StandardCharsets.UTF_8).strip().split(" ", -1);
    if (words.length != 2 || !words[1].matches("\\d{1,18}")) {
      // A mark that can't be read means that everything is sent again, which loses nothing.
      return Place.BEGINNING;
    }
    return new Place(words[0], Long.parseLong(words[1]));
  }

  void write(Place place) throws IOException {
    Path next = file.resolveSibling(NAME + ".part");
    Files.writeString(
        next, place.file() + " " + place.offsetBytes() + "\n", StandardCharsets.UTF_8);
    Files.move(next, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
  }
}
