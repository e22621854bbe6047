package org.vestibule.encode;

import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DicomFile;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;
import org.vestibule.jpeg.PictureWeight;
import org.vestibule.jpeg.Proof;

/**
 * Proves that an object, as it lies on disk, holds the source's picture: its data set is parsed and
 * its codestream decoded to coefficients, which must be the source's through turn and crop.
 */
public final class ObjectProof {

  private ObjectProof() {}

  /**
   * The object itself, if what lies on disk holds the source's picture.
   *
   * @param fromDisk the object's bytes as they were read back
   * @param source the photograph's bytes
   * @param made the object as it was made
   */
  public static Outcome<EncodedObject> prove(byte[] fromDisk, byte[] source, EncodedObject made) {
    return prove(fromDisk, source, made, null);
  }

  /**
   * The same of a photograph that was looked at.
   *
   * @param known what the look found these very bytes of the photograph to weigh; null if nothing
   */
  public static Outcome<EncodedObject> prove(
      byte[] fromDisk, byte[] source, EncodedObject made, @Nullable PictureWeight known) {
    return Part10Reader.read(fromDisk)
        .then(file -> codestream(file, made))
        .then(codestream -> Proof.of(source, made.plan(), codestream, known))
        .map(proved -> made);
  }

  private static Outcome<byte[]> codestream(DicomFile file, EncodedObject made) {
    String uid = file.data().string(Tags.SOPInstanceUID).orElse("");
    if (!uid.equals(made.identity().sopInstanceUid())) {
      return Outcome.refused(
          "the object read back from disk is not the one that was written",
          "check the disk; the photograph is still where it was");
    }
    return Codestream.of(file.data());
  }
}
