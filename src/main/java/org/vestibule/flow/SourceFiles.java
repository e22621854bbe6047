package org.vestibule.flow;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;
import org.vestibule.flow.look.SheetPicture;
import org.vestibule.flow.look.Thumbnail;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.LeftOut;
import org.vestibule.intake.Photo;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.SeenFile;

/** Where photographs lie, known by their content: a file that changed is not the photograph. */
final class SourceFiles {

  private static final String PLACE = "place";

  private final Practice practice;
  private final Ledger ledger;
  private final PhotoMarks marks;

  SourceFiles(Practice practice) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
    this.marks = new PhotoMarks(practice);
  }

  /** Records a photograph that arrived: its names, where it lies, what its camera wrote. */
  void seen(Photo photo) {
    ContentHash hash = photo.arrival().hash();
    ledger.together(
        () -> {
          ledger
              .arrivals()
              .seen(
                  new SeenFile(
                      hash,
                      photo.arrival().shownName(),
                      photo.arrival().sizeBytes(),
                      photo.arrival().modified()));
          ledger.arrivals().facts(hash, PLACE, photo.arrival().file().toAbsolutePath().toString());
          ledger.arrivals().facts(hash, FactsJson.KIND, FactsJson.write(photo.facts()));
          marks.arrived(hash, photo.arrival().name(), photo.facts());
          return hash;
        });
  }

  /** Records a file that could not be taken as a photograph, with what it tells all the same. */
  void seen(Path file, LeftOut left, ContentHash hash) throws IOException {
    long sizeBytes = Files.size(file);
    Instant modified = Files.getLastModifiedTime(file).toInstant();
    CaptureFacts facts = left.facts() == null ? CaptureFacts.NONE : left.facts();
    ledger.together(
        () -> {
          ledger.arrivals().seen(new SeenFile(hash, left.shownName(), sizeBytes, modified));
          ledger.arrivals().facts(hash, PLACE, file.toAbsolutePath().toString());
          ledger.arrivals().facts(hash, FactsJson.KIND, FactsJson.write(facts));
          marks.arrived(hash, left.name(), facts);
          return hash;
        });
  }

  /** What the camera wrote, as it was read when the photograph arrived. */
  CaptureFacts facts(ContentHash hash) {
    return ledger
        .arrivals()
        .facts(hash, FactsJson.KIND)
        .map(FactsJson::read)
        .orElse(CaptureFacts.NONE);
  }

  /** The name under which the photograph arrived first. */
  String name(ContentHash hash) {
    return ledger.arrivals().of(hash).stream().map(SeenFile::name).findFirst().orElse("");
  }

  /** The photograph's bytes, from wherever a file with its content lies. */
  Outcome<byte[]> bytes(ContentHash hash) throws IOException {
    for (Path file : places(hash)) {
      if (Files.isRegularFile(file)) {
        byte[] bytes = Files.readAllBytes(file);
        if (ContentHash.of(bytes).equals(hash)) {
          return Outcome.done(bytes);
        }
      }
    }
    return Outcome.refused(
        "the file of this photograph (" + name(hash) + ") is no longer where it was",
        "put it back into the inbox and run ingest, then try again");
  }

  /** Where the photograph's file was last seen. */
  Optional<Path> place(ContentHash hash) {
    return ledger.arrivals().facts(hash, PLACE).map(Path::of);
  }

  private List<Path> places(ContentHash hash) {
    Optional<Path> recorded = ledger.arrivals().facts(hash, PLACE).map(Path::of);
    List<Path> inInbox =
        ledger.arrivals().of(hash).stream()
            .map(SeenFile::name)
            .filter(name -> !name.contains("\\"))
            .map(name -> practice.settings().inbox().resolve(name))
            .toList();
    return java.util.stream.Stream.concat(recorded.stream(), inInbox.stream()).toList();
  }

  /** A small picture for a sheet, turned as the camera asked. */
  SheetPicture picture(ContentHash hash) {
    return Thumbnail.of(() -> bytesOrReason(hash), Turn.asShown(facts(hash).orientation()));
  }

  /** The same, where a folder that can't be read is a reason like another. */
  Outcome<byte[]> bytesOrReason(ContentHash hash) {
    try {
      return bytes(hash);
    } catch (IOException e) {
      return Outcome.refused(
          "its file can't be read", "check that the folder is connected, then run it again");
    }
  }
}
