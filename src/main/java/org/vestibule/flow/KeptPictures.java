package org.vestibule.flow;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Turn;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;
import org.vestibule.encode.Codestream;
import org.vestibule.encode.Role;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.store.ledger.Intent;

/** Finds the best picture of a filed photograph: its file, or else the frame that is kept. */
final class KeptPictures {

  private static final String TURN = "turn ";

  private final Practice practice;
  private final SourceFiles sources;

  KeptPictures(Practice practice) {
    this.practice = practice;
    this.sources = new SourceFiles(practice);
  }

  /** Records how a frame's picture was turned from the file's, before the frame is made. */
  void turned(ContentHash hash, Intent frame, Turn fromFile) {
    practice.store().ledger().arrivals().facts(hash, TURN + frame.sopUid(), fromFile.name());
  }

  /**
   * The photograph's file if it is still there, else its frame.
   *
   * @param current what is kept of the photograph; may be empty
   */
  Outcome<Picture> best(ContentHash hash, CaptureFacts facts, List<Intent> current)
      throws IOException {
    Outcome<Picture> file =
        sources.bytes(hash).map(bytes -> Picture.ofFile(hash, sources.name(hash), facts, bytes));
    if (file instanceof Done<Picture>) {
      return file;
    }
    Optional<Intent> kept = current.stream().filter(one -> one.role() == Role.FRAME).findFirst();
    if (kept.isEmpty()) {
      return file;
    }
    Intent frame = kept.get();
    Optional<byte[]> bytes = practice.store().objects().get(frame.sopUid());
    Optional<String> turn = practice.store().ledger().arrivals().facts(hash, TURN + frame.sopUid());
    if (bytes.isEmpty() || turn.isEmpty()) {
      return Outcome.refused(
          Outcome.Kind.DAMAGE,
          "neither the photograph's file nor its kept frame can be found",
          "put the file back into the inbox, or restore the objects from the backup");
    }
    return Part10Reader.read(bytes.get())
        .then(frameFile -> fromRecord(hash, facts, frameFile.data(), Turn.valueOf(turn.get())));
  }

  private Outcome<Picture> fromRecord(
      ContentHash hash, CaptureFacts facts, DataSet frame, Turn turned) {
    return Codestream.of(frame)
        .map(
            jpeg ->
                Picture.ofRecord(
                    hash, sources.name(hash), facts, jpeg, turned, frame.bytes(Tags.ICCProfile)));
  }
}
