package org.vestibule.jpeg;

/** An ICC profile put together from its APP2 chunks (ICC.1:2022 Annex B.4; from memory). */
public final class IccProfile {

  private final byte[] bytes;

  IccProfile(byte[] bytes) {
    this.bytes = bytes.clone();
  }

  /** A copy of the profile's bytes. */
  public byte[] bytes() {
    return bytes.clone();
  }

  /** Length in bytes. */
  public int length() {
    return bytes.length;
  }
}
