package org.vestibule.flow;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dicom.DicomFile;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;
import org.vestibule.encode.Codestream;
import org.vestibule.jpeg.JpegStructure;
import org.vestibule.jpeg.SoundScan;
import org.vestibule.store.Finding;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.KeptObject;

/** Re-reads everything that is kept, down to every code of each picture. */
public final class Verify {

  private Verify() {}

  /** Everything that is wrong; empty if the store is sound. */
  public static List<Finding> run(Practice practice) throws IOException {
    return run(practice, uid -> true);
  }

  /**
   * The same for a share of the objects; ledger and index are always held against each other.
   *
   * @param which objects are read, by SOP Instance UID
   */
  public static List<Finding> run(Practice practice, Predicate<String> which) throws IOException {
    return practice.store().verifier().verify(which, Verify::wrongWith);
  }

  private static Optional<String> wrongWith(Intent intent, KeptObject kept, byte[] bytes) {
    Outcome<byte[]> codestream = Part10Reader.read(bytes).then(file -> codestream(file, intent));
    Outcome<JpegStructure> read =
        codestream.then(
            jpeg ->
                ContentHash.of(jpeg).equals(kept.pixelHash())
                    ? SoundScan.check(jpeg)
                    : Outcome.refused("its picture is not the one that was kept", "restore it"));
    return read instanceof Refused<JpegStructure> refused
        ? Optional.of(refused.reason())
        : Optional.empty();
  }

  private static Outcome<byte[]> codestream(DicomFile file, Intent intent) {
    if (!file.data().string(Tags.SOPInstanceUID).equals(Optional.of(intent.sopUid()))
        || !file.data().string(Tags.StudyInstanceUID).equals(Optional.of(intent.studyUid()))) {
      return Outcome.refused("it is not the object that its name says", "restore it");
    }
    if (!file.data().string(Tags.SeriesInstanceUID).equals(Optional.of(intent.seriesUid()))
        || !isNumber(file, Tags.SeriesNumber, intent.seriesNumber())
        || !isNumber(file, Tags.InstanceNumber, intent.instanceNumber())) {
      return Outcome.refused(
          "its place in the series is not the one that the ledger gave it", "restore it");
    }
    return Codestream.of(file.data());
  }

  private static boolean isNumber(DicomFile file, int tag, int number) {
    return file.data().string(tag).map(String::strip).equals(Optional.of("" + number));
  }
}
