package org.vestibule.assign;

import java.util.List;
import org.vestibule.dental.Code;

/**
 * What was ordered for a visit, as a worklist told it; carried into the objects (Request
 * Attributes, PS3.3 C.7.3.1 and 10-9).
 *
 * @param requestedProcedureId empty if not told
 * @param description of the requested procedure; empty if not told
 * @param codes of the requested procedure, maybe none
 * @param steps what was scheduled, at least one
 */
public record Order(
    String requestedProcedureId, String description, List<Code> codes, List<Step> steps) {

  public Order {
    codes = List.copyOf(codes);
    steps = List.copyOf(steps);
  }

  /**
   * A scheduled procedure step.
   *
   * @param id empty if not told
   * @param description empty if not told
   * @param codes of the protocol, maybe none
   */
  public record Step(String id, String description, List<Code> codes) {
    public Step {
      codes = List.copyOf(codes);
    }
  }
}
