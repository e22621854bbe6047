package org.vestibule.dicom;

import org.vestibule.base.Outcome;

/**
 * How a data set is laid down as bytes (PS3.5 chapter 10 and annex A), as far as we read it: little
 * endian, implicit or explicit VR, pixel data native or encapsulated.
 */
public record TransferSyntax(String uid) {

  public static final TransferSyntax IMPLICIT_LITTLE_ENDIAN =
      new TransferSyntax("1.2.840.10008.1.2");
  public static final TransferSyntax EXPLICIT_LITTLE_ENDIAN =
      new TransferSyntax("1.2.840.10008.1.2.1");

  /** JPEG Baseline, process 1: 8 bits, Huffman, SOF0 (PS3.5 A.4.1). */
  public static final TransferSyntax JPEG_BASELINE = new TransferSyntax("1.2.840.10008.1.2.4.50");

  private static final String ENCAPSULATED = "1.2.840.10008.1.2.4.";
  private static final String RUN_LENGTH = "1.2.840.10008.1.2.5";
  private static final String DEFLATED = "1.2.840.10008.1.2.1.99";
  private static final String BIG_ENDIAN = "1.2.840.10008.1.2.2";

  /** True if each element's value representation is written. */
  public boolean isExplicit() {
    // UIDs are compared, not records: the first of those costs every start some 30 ms.
    return !uid.equals(IMPLICIT_LITTLE_ENDIAN.uid);
  }

  /** True if pixel data are fragments of a compressed stream. */
  public boolean isEncapsulated() {
    return uid.startsWith(ENCAPSULATED) || uid.equals(RUN_LENGTH);
  }

  /** The syntax with this UID, or why it isn't read here. */
  public static Outcome<TransferSyntax> of(String uid) {
    TransferSyntax syntax = new TransferSyntax(uid);
    if (syntax.isEncapsulated()
        || uid.equals(IMPLICIT_LITTLE_ENDIAN.uid)
        || uid.equals(EXPLICIT_LITTLE_ENDIAN.uid)) {
      return Outcome.done(syntax);
    }
    if (uid.equals(DEFLATED)) {
      return Outcome.refused(
          "the data set is deflated (transfer syntax " + uid + ")",
          "have it written again as explicit VR little endian");
    }
    if (uid.equals(BIG_ENDIAN)) {
      return Outcome.refused(
          "the data set is big endian (transfer syntax " + uid + ", retired)",
          "have it written again as explicit VR little endian");
    }
    return Outcome.refused(
        "the transfer syntax is not one that is read here",
        "have the file written again as explicit VR little endian");
  }
}
