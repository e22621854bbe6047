package org.vestibule.encode;

import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;
import org.vestibule.jpeg.TranscodePlan;
import org.vestibule.jpeg.Transcoded;

/** A finished object, not yet stored. */
public final class EncodedObject {

  private final Role role;
  private final ObjectIdentity identity;
  private final byte[] file;
  private final ContentHash hash;
  private final ContentHash pictureHash;
  private final TranscodePlan plan;
  private final int widthSamples;
  private final int heightSamples;
  private final int trimmedColumns;
  private final int trimmedRows;
  private final @Nullable String cropWords;

  /** Takes the file's bytes over without copying them. */
  EncodedObject(
      Role role, ObjectIdentity identity, byte[] file, TranscodePlan plan, Transcoded picture) {
    this.role = role;
    this.identity = identity;
    this.file = file;
    this.hash = ContentHash.of(file);
    this.pictureHash = picture.hash();
    this.plan = plan;
    this.widthSamples = picture.width();
    this.heightSamples = picture.height();
    this.trimmedColumns = picture.trimmedColumns();
    this.trimmedRows = picture.trimmedRows();
    this.cropWords = plan.crop() == null ? null : CropPlace.words(picture.effectiveCrop());
  }

  public Role role() {
    return role;
  }

  public ObjectIdentity identity() {
    return identity;
  }

  /** A copy of the Part 10 file's bytes. */
  public byte[] toByteArray() {
    return file.clone();
  }

  /** The Part 10 file's bytes themselves, not a copy: nobody may write into them. */
  public byte[] shared() {
    return file;
  }

  /** Hash of the file's bytes. */
  public ContentHash hash() {
    return hash;
  }

  /** Hash of the codestream inside it. */
  public ContentHash pictureHash() {
    return pictureHash;
  }

  /** How the picture came out of the source, for the proof. */
  public TranscodePlan plan() {
    return plan;
  }

  /** Width of the picture in samples. */
  public int widthSamples() {
    return widthSamples;
  }

  /** Height of the picture in samples. */
  public int heightSamples() {
    return heightSamples;
  }

  /** Columns dropped at the edge because they could not be turned. */
  public int trimmedColumns() {
    return trimmedColumns;
  }

  /** Rows dropped at the edge because they could not be turned. */
  public int trimmedRows() {
    return trimmedRows;
  }

  /** The part of the frame that a crop shows, in words; null for a frame. */
  public @Nullable String cropWords() {
    return cropWords;
  }
}
