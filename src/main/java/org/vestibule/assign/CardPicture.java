package org.vestibule.assign;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.WaitReason.Kind;
import org.vestibule.card.CardSighting;
import org.vestibule.card.VisitCard;

/** What becomes of a picture with a card in it: it is never filed as a clinical photograph. */
final class CardPicture {

  private static final Proposal NOTHING = new Proposal(Map.of(), false);

  private CardPicture() {}

  /**
   * Empty for a picture without a card.
   *
   * @param hasRow true if a person's row says something of it, as of a clinical photograph
   */
  static Optional<Assignment> of(@Nullable CardSighting sighting, boolean hasRow) {
    if (sighting instanceof CardSighting.Refused refused) {
      return refused.seen()
          ? Optional.of(waits(refused.reason(), refused.advice()))
          : Optional.empty();
    }
    if (!(sighting instanceof CardSighting.OneCard one)) {
      return Optional.empty();
    }
    String what = one.card() instanceof VisitCard ? "a visit card" : "a view card";
    return Optional.of(
        hasRow
            ? waits(
                what + " is in the picture, but a row of the manifest takes it for a photograph",
                "take the row out; if the picture shows more than the card, file it by hand with a"
                    + " crop that leaves the card out")
            : new Assignment.SetAside(
                one.card(), "it is a photograph of " + what + ": kept, and never filed"));
  }

  private static Assignment waits(String sentence, String advice) {
    return new Assignment.Waits(NOTHING, List.of(new WaitReason(Kind.CARD, sentence, advice)));
  }
}
