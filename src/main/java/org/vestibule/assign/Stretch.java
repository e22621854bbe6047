package org.vestibule.assign;

import java.util.List;

/**
 * A part of a device's order that one visit's card opens.
 *
 * @param token of the card
 * @param first place of the opening card
 * @param last place of the closing card, or of the last photograph if there is none
 * @param kind how it is bounded
 */
record Stretch(String token, int first, int last, Kind kind) {

  enum Kind {
    /** The same card opens and closes it. */
    CLOSED,
    /** A card opens it, and no card of the same visit follows. */
    OPENED,
    /** The card was photographed so often that what it opens and closes can't be told. */
    UNCLEAR
  }

  int length() {
    return last - first;
  }

  boolean holds(int place) {
    return first <= place && place <= last;
  }

  List<Member> members(DeviceRoll roll) {
    return roll.ordered().subList(first, last + 1);
  }
}
