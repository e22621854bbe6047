package org.vestibule.dicom;

/** A file as PS3.10 chapter 7 lays it down: preamble, file meta information, data set. */
public final class DicomFile {

  static final int PREAMBLE_BYTES = 128;

  private final byte[] preamble;
  private final DataSet meta;
  private final DataSet data;
  private final TransferSyntax syntax;

  DicomFile(byte[] preamble, DataSet meta, DataSet data, TransferSyntax syntax) {
    this.preamble = preamble.clone();
    this.meta = meta.copy();
    this.data = data.copy();
    this.syntax = syntax;
  }

  /** The 128 bytes before the prefix; another kind of file may hide there, so ours are zero. */
  public byte[] preamble() {
    return preamble.clone();
  }

  /** A copy of the file meta information (group 0002). */
  public DataSet meta() {
    return meta.copy();
  }

  /** A copy of the data set. */
  public DataSet data() {
    return data.copy();
  }

  public TransferSyntax transferSyntax() {
    return syntax;
  }
}
