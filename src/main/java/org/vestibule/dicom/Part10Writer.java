package org.vestibule.dicom;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.vestibule.base.Outcome;

/** Writes a data set as a file with preamble and file meta information (PS3.10 chapter 7). */
public final class Part10Writer {

  static final byte[] PREFIX = "DICM".getBytes(StandardCharsets.US_ASCII);

  private Part10Writer() {}

  /**
   * The file's bytes: a zero preamble, file meta information made from the data set's own SOP class
   * and instance, and the data set. Equal data sets give equal bytes.
   */
  public static Outcome<byte[]> write(DataSet data, TransferSyntax syntax) {
    Optional<String> sopClass = data.string(Tags.SOPClassUID);
    Optional<String> sopInstance = data.string(Tags.SOPInstanceUID);
    if (sopClass.isEmpty() || sopInstance.isEmpty()) {
      return Outcome.refused(
          "the data set lacks SOPClassUID or SOPInstanceUID, which the file header repeats",
          "put both");
    }
    DataSet meta =
        new DataSet()
            .put(Tags.FileMetaInformationVersion, new byte[] {0, 1})
            .put(Tags.MediaStorageSOPClassUID, sopClass.get())
            .put(Tags.MediaStorageSOPInstanceUID, sopInstance.get())
            .put(Tags.TransferSyntaxUID, syntax.uid())
            .put(Tags.ImplementationClassUID, Implementation.CLASS_UID)
            .put(Tags.ImplementationVersionName, Implementation.VERSION_NAME);
    return write(new DicomFile(new byte[DicomFile.PREAMBLE_BYTES], meta, data, syntax));
  }

  /** A file as it was read: its own preamble and file meta information, the group length anew. */
  public static Outcome<byte[]> write(DicomFile file) {
    DataSet data = file.data();
    for (Element element : data) {
      if (Tags.group(element.tag()) < 8) {
        return Outcome.refused(
            "the data set holds " + element + ", which is not an element of a data set",
            "remove it: groups 0000 to 0006 belong to messages, file headers and directories");
      }
    }
    return DataSetWriter.write(file.meta().remove(Tags.FileMetaInformationGroupLength), META)
        .then(meta -> DataSetWriter.write(head(file, meta), data, file.transferSyntax()));
  }

  private static final TransferSyntax META = TransferSyntax.EXPLICIT_LITTLE_ENDIAN;

  private static byte[] head(DicomFile file, byte[] meta) {
    DataSet length = new DataSet().put(Tags.FileMetaInformationGroupLength, meta.length);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(file.preamble());
    out.writeBytes(PREFIX);
    out.writeBytes(DataSetWriter.write(length, META).orThrow());
    out.writeBytes(meta);
    return out.toByteArray();
  }
}
