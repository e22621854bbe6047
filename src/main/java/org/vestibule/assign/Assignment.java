package org.vestibule.assign;

import java.util.List;
import org.vestibule.card.Card;
import org.vestibule.dental.Laid;

/** What becomes of a photograph: it is decided, it waits for a person, or it is one of a card. */
public sealed interface Assignment {

  /** Everything is known: it can be filed, laid like this. */
  record Decided(Decision decision, Laid laid) implements Assignment {}

  /**
   * It is a photograph of a card: kept and shown as such, never filed as a clinical photograph.
   *
   * @param card that was read
   * @param sentence for people
   */
  record SetAside(Card card, String sentence) implements Assignment {}

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
