package org.vestibule.flow;

import org.vestibule.base.ContentHash;
import org.vestibule.base.Turn;
import org.vestibule.intake.CaptureFacts;

/**
 * A photograph's picture at hand: the file itself, or, where that is gone, the frame that is kept
 * in the record.
 */
final class Picture {

  private final ContentHash hash;
  private final String name;
  private final CaptureFacts facts;
  private final byte[] bytes;
  private final Turn turned;
  private final byte[] profile;
  private final boolean fromRecord;

  private Picture(
      ContentHash hash,
      String name,
      CaptureFacts facts,
      byte[] bytes,
      Turn turned,
      byte[] profile,
      boolean fromRecord) {
    this.hash = hash;
    this.name = name;
    this.facts = facts;
    this.bytes = bytes.clone();
    this.turned = turned;
    this.profile = profile.clone();
    this.fromRecord = fromRecord;
  }

  static Picture ofFile(ContentHash hash, String name, CaptureFacts facts, byte[] bytes) {
    return new Picture(hash, name, facts, bytes, Turn.NONE, new byte[0], false);
  }

  /**
   * The frame kept earlier.
   *
   * @param turned how the frame's picture was turned from the file's
   * @param profile its ICC profile; empty if none
   */
  static Picture ofRecord(
      ContentHash hash,
      String name,
      CaptureFacts facts,
      byte[] codestream,
      Turn turned,
      byte[] profile) {
    return new Picture(hash, name, facts, codestream, turned, profile, true);
  }

  ContentHash hash() {
    return hash;
  }

  String name() {
    return name;
  }

  CaptureFacts facts() {
    return facts;
  }

  byte[] bytes() {
    return bytes.clone();
  }

  /** How the picture at hand was already turned from the file's. */
  Turn turned() {
    return turned;
  }

  byte[] profile() {
    return profile.clone();
  }

  boolean fromRecord() {
    return fromRecord;
  }
}
