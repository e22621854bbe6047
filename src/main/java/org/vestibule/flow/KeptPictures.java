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
import org.vestibule.store.ledger.Arrivals;
import org.vestibule.store.ledger.Intent;

/** Finds the best picture of a filed photograph: its file, or else the frame that is kept. */
final class KeptPictures {

  private static final String TURN = "turn ";
  private static final String PART = "part ";

  private final Practice practice;
  private final SourceFiles sources;

  KeptPictures(Practice practice) {
    this.practice = practice;
    this.sources = new SourceFiles(practice);
  }

  /**
   * Records what a frame holds of the file's picture, before the frame is made.
   *
   * @param fromFile how it is turned from the file's
   */
  void made(Picture picture, Intent frame, Turn fromFile) {
    Arrivals arrivals = practice.store().ledger().arrivals();
    String turn = TURN + frame.sopUid();
    // Mostly written with the intent; asked first, since asking needs no transaction.
    if (arrivals.facts(picture.hash(), turn).filter(fromFile.name()::equals).isEmpty()) {
      arrivals.facts(picture.hash(), turn, fromFile.name());
    }
    if (!picture.part().isEmpty()) {
      arrivals.facts(picture.hash(), PART + frame.sopUid(), picture.part());
    }
  }

  /** Records of a frame that was read back that it stands for the file: nothing is turned. */
  void read(ContentHash hash, String frameUid, String part) {
    Arrivals arrivals = practice.store().ledger().arrivals();
    arrivals.facts(hash, TURN + frameUid, Turn.NONE.name());
    if (!part.isEmpty()) {
      arrivals.facts(hash, PART + frameUid, part);
    }
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
    Arrivals arrivals = practice.store().ledger().arrivals();
    Optional<String> turn = arrivals.facts(hash, TURN + frame.sopUid());
    String part = arrivals.facts(hash, PART + frame.sopUid()).orElse("");
    if (bytes.isEmpty() || turn.isEmpty()) {
      return Outcome.refused(
          Outcome.Kind.DAMAGE,
          "neither the photograph's file nor its kept frame can be found",
          "put the file back into the inbox, or restore the objects from the backup");
    }
    return Part10Reader.read(bytes.get())
        .then(
            frameFile -> fromRecord(hash, facts, frameFile.data(), Turn.valueOf(turn.get()), part));
  }

  private Outcome<Picture> fromRecord(
      ContentHash hash, CaptureFacts facts, DataSet frame, Turn turned, String part) {
    return Codestream.of(frame)
        .map(
            jpeg ->
                Picture.ofRecord(
                    hash,
                    sources.name(hash),
                    facts,
                    jpeg,
                    turned,
                    frame.bytes(Tags.ICCProfile),
                    part));
  }
}
