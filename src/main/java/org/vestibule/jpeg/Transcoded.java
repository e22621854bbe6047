package org.vestibule.jpeg;

import org.vestibule.base.ContentHash;

/**
 * A bare baseline JPEG made without re-encoding a sample: SOI, DQT, SOF0, DHT, DRI where needed,
 * SOS, EOI, and nothing else.
 */
public final class Transcoded {

  private final byte[] bytes;
  private final CropBox effectiveCrop;
  private final int trimmedColumns;
  private final int trimmedRows;

  /** Takes the bytes over without copying them. */
  Transcoded(byte[] bytes, CropBox effectiveCrop, int trimmedColumns, int trimmedRows) {
    this.bytes = bytes;
    this.effectiveCrop = effectiveCrop;
    this.trimmedColumns = trimmedColumns;
    this.trimmedRows = trimmedRows;
  }

  /** A copy of the JPEG's bytes. */
  public byte[] bytes() {
    return bytes.clone();
  }

  /** The JPEG's bytes themselves, not a copy: nobody may write into them. */
  public byte[] shared() {
    return bytes;
  }

  /** Hash of the JPEG's bytes. */
  public ContentHash hash() {
    return ContentHash.of(bytes);
  }

  /** Width in samples. */
  public int width() {
    return effectiveCrop.width();
  }

  /** Height in samples. */
  public int height() {
    return effectiveCrop.height();
  }

  /**
   * The part of the displayed picture that was kept; its left and top are moved outward to where
   * blocks start.
   */
  public CropBox effectiveCrop() {
    return effectiveCrop;
  }

  /** Columns that were asked for and dropped because they can't be turned without loss. */
  public int trimmedColumns() {
    return trimmedColumns;
  }

  /** Rows that were asked for and dropped because they can't be turned without loss. */
  public int trimmedRows() {
    return trimmedRows;
  }
}
