package org.vestibule.jpeg;

/** The coding process that a frame header names by its marker (ITU-T T.81 Table B.1). */
public enum CodingProcess {
  BASELINE(0xC0, true, "baseline"),
  EXTENDED(0xC1, true, "extended sequential"),
  PROGRESSIVE(0xC2, true, "progressive"),
  LOSSLESS(0xC3, false, "lossless"),
  DIFFERENTIAL_SEQUENTIAL(0xC5, false, "hierarchical (differential sequential)"),
  DIFFERENTIAL_PROGRESSIVE(0xC6, false, "hierarchical (differential progressive)"),
  DIFFERENTIAL_LOSSLESS(0xC7, false, "hierarchical (differential lossless)"),
  ARITHMETIC_SEQUENTIAL(0xC9, false, "arithmetic-coded sequential"),
  ARITHMETIC_PROGRESSIVE(0xCA, false, "arithmetic-coded progressive"),
  ARITHMETIC_LOSSLESS(0xCB, false, "arithmetic-coded lossless"),
  ARITHMETIC_DIFFERENTIAL_SEQUENTIAL(0xCD, false, "arithmetic-coded hierarchical"),
  ARITHMETIC_DIFFERENTIAL_PROGRESSIVE(0xCE, false, "arithmetic-coded hierarchical"),
  ARITHMETIC_DIFFERENTIAL_LOSSLESS(0xCF, false, "arithmetic-coded hierarchical");

  private final int marker;
  private final boolean readable;
  private final String words;

  CodingProcess(int marker, boolean readable, String words) {
    this.marker = marker;
    this.readable = readable;
    this.words = words;
  }

  static CodingProcess ofMarker(int marker) {
    for (CodingProcess process : values()) {
      if (process.marker == marker) {
        return process;
      }
    }
    throw new IllegalArgumentException(
        "marker FF " + Integer.toHexString(marker) + " is not a frame header");
  }

  /** The second byte of the frame header's marker. */
  public int marker() {
    return marker;
  }

  /** True if this engine can decode the process to coefficients. */
  public boolean readable() {
    return readable;
  }

  /** The process in words. */
  public String words() {
    return words;
  }
}
