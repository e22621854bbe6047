package org.vestibule.dicom;

import java.util.Arrays;
import java.util.Optional;
import org.vestibule.base.Outcome;

/** Reads a file with preamble and file meta information (PS3.10 chapter 7). */
public final class Part10Reader {

  private static final int META_START = DicomFile.PREAMBLE_BYTES + 4;
  private static final int GROUP_LENGTH_BYTES = 12;

  private Part10Reader() {}

  /** The file that these bytes hold, or why they can't be read as one. */
  public static Outcome<DicomFile> read(byte[] bytes) {
    if (bytes.length < META_START || !hasPrefix(bytes)) {
      return Outcome.refused(
          "not a DICOM file: DICM is missing at byte " + DicomFile.PREAMBLE_BYTES,
          "give a file with preamble and file meta information (PS3.10)");
    }
    try {
      return meta(bytes);
    } catch (Refusal refusal) {
      return refusal.outcome();
    }
  }

  private static boolean hasPrefix(byte[] bytes) {
    return Arrays.equals(bytes, DicomFile.PREAMBLE_BYTES, META_START, Part10Writer.PREFIX, 0, 4);
  }

  private static Outcome<DicomFile> meta(byte[] bytes) {
    Source head = new Source(bytes, META_START, bytes.length);
    int tag = head.tag();
    Vr vr = head.vr(tag);
    if (tag != Tags.FileMetaInformationGroupLength || vr != Vr.UL || head.uint16() != 4) {
      return Outcome.refused(
          "the file meta information doesn't begin with its group length",
          "have the file written again: PS3.10 7.1 demands it");
    }
    long length = head.uint32();
    long end = head.stop(tag, length, bytes.length);
    int start = META_START + GROUP_LENGTH_BYTES;
    return DataSetReader.read(
            new Source(bytes, start, (int) end), TransferSyntax.EXPLICIT_LITTLE_ENDIAN)
        .then(meta -> data(bytes, meta, (int) end, length));
  }

  private static Outcome<DicomFile> data(byte[] bytes, DataSet meta, int start, long metaLength) {
    for (Element element : meta) {
      if (Tags.group(element.tag()) != 2) {
        return Outcome.refused(
            "the file meta information holds " + element,
            "have the file written again: only group 0002 belongs there");
      }
    }
    Optional<String> uid = meta.string(Tags.TransferSyntaxUID);
    if (uid.isEmpty()) {
      return Outcome.refused(
          "the file meta information lacks TransferSyntaxUID",
          "have the file written again with it");
    }
    byte[] preamble = Arrays.copyOf(bytes, DicomFile.PREAMBLE_BYTES);
    meta.put(Tags.FileMetaInformationGroupLength, metaLength);
    return TransferSyntax.of(uid.get())
        .then(
            syntax ->
                DataSetReader.read(new Source(bytes, start, bytes.length), syntax)
                    .map(data -> new DicomFile(preamble, meta, data, syntax)));
  }
}
