package org.vestibule.intake;

import java.io.IOException;
import java.util.List;
import org.vestibule.base.ContentHash;
import org.vestibule.base.FileBytes;
import org.vestibule.base.Outcome;
import org.vestibule.jpeg.JpegStructure;

/**
 * A JPEG photograph that arrived: what its camera said about it and how its file is built.
 *
 * @param arrival the file
 * @param facts what the camera wrote
 * @param structure how the file is built
 * @param hidden what hides in it
 * @param warnings recoverable oddities, each a sentence
 */
public record Photo(
    Arrival arrival,
    CaptureFacts facts,
    JpegStructure structure,
    List<Hidden> hidden,
    List<String> warnings) {

  public Photo {
    hidden = List.copyOf(hidden);
    warnings = List.copyOf(warnings);
  }

  /** True if something of this kind hides in the file. */
  public boolean hides(Hidden.Kind kind) {
    return hidden.stream().anyMatch(found -> found.kind() == kind);
  }

  /**
   * The file's bytes, read again: exactly those that the facts were read from, or a refusal if the
   * file has gone or changed since.
   */
  public Outcome<byte[]> bytes() {
    byte[] bytes;
    try {
      bytes = FileBytes.upTo(arrival.file(), arrival.sizeBytes());
    } catch (IOException e) {
      return Outcome.refused(
          arrival.shownName() + " can no longer be read (" + Failures.words(e) + ")",
          "check that the folder is connected, then run again");
    }
    if (bytes.length != arrival.sizeBytes() || !ContentHash.of(bytes).equals(arrival.hash())) {
      return Outcome.refused(
          arrival.shownName() + " has changed since it was read a moment ago",
          "wait until nothing writes into the folder any more, then run again");
    }
    return Outcome.done(bytes);
  }
}
