package org.vestibule.assign;

import org.jspecify.annotations.Nullable;
import org.vestibule.card.ViewCard;

/**
 * What a view card says about one photograph.
 *
 * @param card that settles the view; null if none does
 * @param reason why a view card doesn't settle it; null if one does, or if there is none
 */
public record SortedView(@Nullable ViewCard card, @Nullable WaitReason reason) {

  static final SortedView NONE = new SortedView(null, null);

  static SortedView settled(ViewCard card) {
    return new SortedView(card, null);
  }

  static SortedView waits(String sentence, String advice) {
    return new SortedView(null, new WaitReason(WaitReason.Kind.NO_VIEW, sentence, advice));
  }
}
