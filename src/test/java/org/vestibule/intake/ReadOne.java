package org.vestibule.intake;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.vestibule.base.ContentHash;

/** Reads one file's bytes as the intake does, without a folder. */
final class ReadOne {

  private ReadOne() {}

  static Photo photo(TestJpeg jpeg, String name, String... neighbours) {
    byte[] bytes = jpeg.bytes();
    List<FoundFile> files =
        Arrays.stream(neighbours)
            .map(other -> new FoundFile(Path.of(other), other, 1, Instant.EPOCH))
            .toList();
    Arrival arrival =
        new Arrival(Path.of(name), name, bytes.length, Instant.EPOCH, ContentHash.of(bytes));
    return new PhotoReader(arrival, bytes, Neighbours.of(files)).read().orElseThrow();
  }

  static Photo photo(TestJpeg jpeg) {
    return photo(jpeg, "IMG_1.jpg");
  }
}
