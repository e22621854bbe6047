package org.vestibule.audit;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.audit.SentMark.Place;

/** The messages behind a mark, in the order in which they were written; whole lines alone. */
final class Unsent implements Closeable {

  private final Deque<Path> files = new ArrayDeque<>();
  private Place place;
  private InputStream in = InputStream.nullInputStream();

  Unsent(Path folder, Place from) throws IOException {
    this.place = from;
    for (Path file : new AuditFile(folder).months()) {
      if (name(file).compareTo(from.file()) >= 0) {
        files.add(file);
      }
    }
    open();
  }

  static int count(Path folder, Place from) throws IOException {
    int count = 0;
    try (Unsent unsent = new Unsent(folder, from)) {
      while (!unsent.next().isEmpty()) {
        count++;
      }
    }
    return count;
  }

  /** Time and message; empty if there is none left. A line that is no message is passed over. */
  List<String> next() throws IOException {
    for (String line = line(); line != null; line = line()) {
      int space = line.indexOf(" <?xml");
      if (space > 0 && line.endsWith("</AuditMessage>")) {
        return List.of(line.substring(0, space), line.substring(space + 1));
      }
    }
    return List.of();
  }

  /** Behind the message that was given last. */
  Place place() {
    return place;
  }

  private @Nullable String line() throws IOException {
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    for (int b = in.read(); ; b = in.read()) {
      if (b == '\n') {
        place = new Place(place.file(), place.offsetBytes() + line.size() + 1);
        return line.toString(StandardCharsets.UTF_8);
      }
      if (b >= 0) {
        line.write(b);
      } else if (files.size() > 1) {
        files.remove();
        open();
        line.reset();
      } else {
        return null;
      }
    }
  }

  private void open() throws IOException {
    Path file = files.peek();
    if (file == null) {
      return;
    }
    long from = name(file).equals(place.file()) ? place.offsetBytes() : 0;
    place = new Place(name(file), from);
    in.close();
    in = new BufferedInputStream(Files.newInputStream(file));
    in.skipNBytes(Math.min(from, Files.size(file)));
  }

  private static String name(Path file) {
    return String.valueOf(file.getFileName());
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
