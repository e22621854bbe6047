package org.vestibule.encode;

import java.time.ZoneId;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Decision;
import org.vestibule.base.Turn;
import org.vestibule.dental.Laid;
import org.vestibule.intake.CaptureFacts;

/**
 * Everything an object is made from, besides the photograph's bytes.
 *
 * @param facts what the camera wrote
 * @param decision what was decided about the photograph
 * @param laid how the picture is to be laid
 * @param sheet the turn from the stored picture to the one on the look sheet, in which a crop is
 *     marked
 * @param frame identity of the frame
 * @param crop identity of the crop, if the decision has one
 * @param part which rows of the photograph there are, such as {@code rows 1 to 1232 of 3024}; empty
 *     if all
 * @param institution the practice's name; empty if none
 * @param zone where the practice's clocks are
 * @param withoutIdentity how the identity is taken out; null if the objects are to have it
 */
public record EncodeRequest(
    CaptureFacts facts,
    Decision decision,
    Laid laid,
    Turn sheet,
    ObjectIdentity frame,
    @Nullable ObjectIdentity crop,
    String part,
    String institution,
    ZoneId zone,
    @Nullable WithoutIdentity withoutIdentity) {

  public EncodeRequest {
    if ((decision.crop() == null) != (crop == null)) {
      throw new IllegalArgumentException("a crop needs an identity, and only a crop does");
    }
  }

  /** Objects that say whose they are. */
  public EncodeRequest(
      CaptureFacts facts,
      Decision decision,
      Laid laid,
      Turn sheet,
      ObjectIdentity frame,
      @Nullable ObjectIdentity crop,
      String part,
      String institution,
      ZoneId zone) {
    this(facts, decision, laid, sheet, frame, crop, part, institution, zone, null);
  }
}
