package org.vestibule.flow;

import org.vestibule.store.steps.WriteStep;
import org.vestibule.store.steps.WriteSteps;

/** Ends a run at a write step as a killed process would, without the cost of a process. */
public final class Death extends Error {

  private static final long serialVersionUID = 1L;

  private Death(WriteStep step) {
    super(step.name());
  }

  /** Dies when this step is reached for the given time, counted from 1. */
  public static WriteSteps at(WriteStep wanted, int time) {
    int[] times = {0};
    return step -> {
      if (step == wanted && ++times[0] == time) {
        throw new Death(step);
      }
    };
  }
}
