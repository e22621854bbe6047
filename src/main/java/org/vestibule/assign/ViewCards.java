package org.vestibule.assign;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.vestibule.card.ViewCard;

/**
 * What view cards say about the photographs after them. From the first view card of a stretch to
 * its closing card, cards and photographs must alternate one to one, with no file number missing:
 * then a forgotten card, a late photograph, a lost file, a card photographed after instead of
 * before its photograph or one that was not recognised all break the pattern, and no view is
 * settled.
 *
 * <p>A card picked by mistake leaves the pattern whole. It would show up twice, or lack its
 * counterpart of the other side or arch; so a card used twice settles nothing, and one that names a
 * side or an arch needs its counterpart in the same stretch. A card that names teeth never settles
 * them: nothing in the pattern could show that it was the wrong one.
 */
final class ViewCards {

  private record Pair(ViewCard card, int photo) {}

  private static final String SAY = "look at it and name the view";

  private final DeviceRoll roll;
  private final CheckedStretch checked;

  ViewCards(DeviceRoll roll, CheckedStretch checked) {
    this.roll = roll;
    this.checked = checked;
  }

  void sort(Map<Integer, SortedView> views) {
    List<Integer> places = new ArrayList<>();
    for (int at = checked.stretch().first(); at <= checked.stretch().last(); at++) {
      Member member = roll.ordered().get(at);
      boolean started = !places.isEmpty() || member.viewCard() != null;
      if (started && member.token() == null && !member.isCopy()) {
        places.add(at);
      }
    }
    if (places.isEmpty()) {
      return;
    }
    SortedView why = whyNot(places);
    if (why != null) {
      places.forEach(at -> views.put(at, why));
      return;
    }
    settle(pairs(places), views);
  }

  private @Nullable SortedView whyNot(List<Integer> places) {
    if (checked.stretch().kind() != Stretch.Kind.CLOSED) {
      return SortedView.waits(
          "view cards only count between two photographs of one visit's card", SAY);
    }
    if (!checked.ofOrder().isEmpty()
        || !checked.order().counted()
        || checked.order().missing() > 0) {
      return SortedView.waits(
          "a view card stands before it, but that nothing is missing between the cards is not"
              + " certain",
          SAY);
    }
    boolean alternate = places.size() % 2 == 0;
    for (int at = 0; at < places.size() && alternate; at++) {
      Member member = roll.ordered().get(places.get(at));
      alternate = at % 2 == 0 ? member.viewCard() != null : member.isPhotograph();
    }
    return alternate
        ? null
        : SortedView.waits(
            "view cards and photographs don't take turns one by one, so a card may have been"
                + " forgotten",
            SAY + "; photograph a view card before each single photograph, retakes too");
  }

  private List<Pair> pairs(List<Integer> places) {
    List<Pair> pairs = new ArrayList<>();
    for (int at = 0; at + 1 < places.size(); at += 2) {
      ViewCard card = roll.ordered().get(places.get(at)).viewCard();
      if (card != null) {
        pairs.add(new Pair(card, places.get(at + 1)));
      }
    }
    return pairs;
  }

  private void settle(List<Pair> pairs, Map<Integer, SortedView> views) {
    Map<String, Integer> uses = new HashMap<>();
    pairs.forEach(pair -> uses.merge(pair.card().view(), 1, Integer::sum));
    for (Pair pair : pairs) {
      views.put(pair.photo(), settled(pair.card(), uses));
    }
  }

  private static SortedView settled(ViewCard card, Map<String, Integer> uses) {
    if (card.teeth() != null && !card.teeth().isEmpty()) {
      return SortedView.waits(
          "the view card before it names teeth, and a card alone never settles those",
          "look at it and name the view and the teeth");
    }
    if (uses.getOrDefault(card.view(), 0) > 1) {
      return SortedView.waits(
          "the view card before it was photographed twice in this visit, so once it may have been"
              + " the wrong one",
          SAY);
    }
    boolean alone = Counterparts.of(card.view()).stream().anyMatch(key -> !uses.containsKey(key));
    return alone
        ? SortedView.waits(
            "the view card before it names a side or an arch, and the card of the other one was not"
                + " photographed in this visit, so it may have been the wrong one",
            SAY)
        : SortedView.settled(card);
  }
}
