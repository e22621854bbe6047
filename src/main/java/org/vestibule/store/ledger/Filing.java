package org.vestibule.store.ledger;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;
import org.vestibule.encode.Role;

/**
 * A photograph that is to be filed.
 *
 * @param decided what was decided, as text: the same photograph, decision, revision and recipe are
 *     the same object on any day
 * @param recipe what an object is made by, besides photograph and decision, as text
 * @param worklistStudyUid the study that the worklist names, if it does; it counts only at the
 *     visit's first filing
 * @param device names the camera; with the set and the role it decides the series
 * @param set the set of views it belongs to, or empty
 * @param roles {@link Role#FRAME} alone, or both if it is cropped
 */
public record Filing(
    ContentHash hash,
    String decisionId,
    String decided,
    String recipe,
    String issuer,
    String patientId,
    String visitKey,
    @Nullable String worklistStudyUid,
    String device,
    String set,
    List<Role> roles) {

  public Filing {
    roles = List.copyOf(roles);
    if (!roles.contains(Role.FRAME) || roles.stream().distinct().count() != roles.size()) {
      throw new IllegalArgumentException("a filing has a frame, and at most one crop");
    }
  }
}
