package org.vestibule.assign;

import java.util.List;
import org.vestibule.dental.Laid;

/** What becomes of a photograph: it is decided, or it waits for a person. */
public sealed interface Assignment {

  /** Everything is known: it can be filed, laid like this. */
  record Decided(Decision decision, Laid laid) implements Assignment {}

  /** It waits, with what is known and why. */
  record Waits(Proposal proposal, List<WaitReason> reasons) implements Assignment {

    public Waits {
      reasons = List.copyOf(reasons);
      if (reasons.isEmpty()) {
        throw new IllegalArgumentException("a photograph waits for a reason");
      }
    }
  }
}
