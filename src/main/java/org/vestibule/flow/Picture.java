package org.vestibule.flow;

import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Decision;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;
import org.vestibule.encode.Encoder;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.jpeg.JpegStructure;
import org.vestibule.jpeg.PictureWeight;
import org.vestibule.jpeg.Salvage;

/**
 * A photograph's picture at hand: the file itself, or a bare codestream with its colour profile
 * aside, which is the frame kept in the record where the file is gone, or the sound part of a
 * damaged file.
 */
final class Picture {

  private final ContentHash hash;
  private final String name;
  private final CaptureFacts facts;
  private final byte[] bytes;
  private final Turn turned;
  private final byte[] profile;
  private final boolean bare;
  private final String part;
  private final FirstSight sight;

  private Picture(
      ContentHash hash,
      String name,
      CaptureFacts facts,
      byte[] bytes,
      Turn turned,
      byte[] profile,
      boolean bare,
      String part,
      FirstSight sight) {
    this.sight = sight;
    this.hash = hash;
    this.name = name;
    this.facts = facts;
    this.bytes = bytes;
    this.turned = turned;
    this.profile = profile.clone();
    this.bare = bare;
    this.part = part;
  }

  static Picture ofFile(ContentHash hash, String name, CaptureFacts facts, byte[] bytes) {
    return new Picture(
        hash, name, facts, bytes, Turn.NONE, new byte[0], false, "", FirstSight.NONE);
  }

  /**
   * The frame kept earlier.
   *
   * @param turned how the frame's picture was turned from the file's
   * @param profile its ICC profile; empty if none
   * @param part which rows of the photograph it holds; empty if all
   */
  static Picture ofRecord(
      ContentHash hash,
      String name,
      CaptureFacts facts,
      byte[] codestream,
      Turn turned,
      byte[] profile,
      String part) {
    return new Picture(hash, name, facts, codestream, turned, profile, true, part, FirstSight.NONE);
  }

  /** The same picture, of which this was seen before. */
  Picture seen(FirstSight before) {
    return new Picture(hash, name, facts, bytes, turned, profile, bare, part, before);
  }

  /** What one look at the file sees, or saw before; nothing of a bare codestream. */
  FirstSight sight() {
    return bare || !sight.equals(FirstSight.NONE) ? sight : FirstSight.of(bytes);
  }

  /** What the file was found to weigh when it was looked at; null if it was not weighed. */
  @Nullable PictureWeight knownWeight() {
    return sight.weight();
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

  /** The bytes themselves, not a copy: nobody may write into them. */
  byte[] bytes() {
    return bytes;
  }

  /** How the picture at hand was already turned from the file's. */
  Turn turned() {
    return turned;
  }

  byte[] profile() {
    return profile.clone();
  }

  /** True if the bytes are a codestream without the file around it. */
  boolean isBare() {
    return bare;
  }

  /** Which rows of the photograph these are; empty if all. */
  String part() {
    return part;
  }

  /** The picture to file by a decision: the sound part of a damaged file, where that was asked. */
  Outcome<Picture> by(Decision decision) {
    if (bare || !decision.maySalvage()) {
      return Outcome.done(this);
    }
    return Salvage.of(bytes)
        .then(
            salvage ->
                JpegStructure.read(bytes)
                    .map(
                        structure ->
                            ofRecord(
                                hash,
                                name,
                                facts,
                                salvage.picture().bytes(),
                                Turn.NONE,
                                Encoder.profile(structure),
                                salvage.words())));
  }
}
