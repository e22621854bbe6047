package org.vestibule.assign;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.WaitReason.Kind;

/**
 * A stretch and what was found.
 *
 * @param stretch the stretch
 * @param visit of its card; null if that is not sure
 * @param order what its names say
 * @param ofOrder why its order is not certain
 * @param ofVisit why its card does not settle whose it is
 */
record CheckedStretch(
    Stretch stretch,
    @Nullable Visit visit,
    OrderCheck.Found order,
    List<WaitReason> ofOrder,
    List<WaitReason> ofVisit) {

  CheckedStretch {
    ofOrder = List.copyOf(ofOrder);
    ofVisit = List.copyOf(ofVisit);
  }

  /** Everything that speaks against it. */
  List<WaitReason> reasons() {
    List<WaitReason> all = new ArrayList<>(ofOrder);
    all.addAll(ofVisit);
    return all;
  }

  boolean isSound() {
    return visit != null && ofOrder.isEmpty() && ofVisit.isEmpty();
  }

  /** The same, with one more reason against its visit. */
  CheckedStretch against(WaitReason reason) {
    List<WaitReason> more = new ArrayList<>(ofVisit);
    more.add(reason);
    return new CheckedStretch(stretch, visit, order, ofOrder, more);
  }

  /** True if cards or claims contradict each other, so that the card's visit is no proposal. */
  boolean contradictsItself() {
    return reasons().stream().anyMatch(reason -> reason.kind() == Kind.CONTRADICTION);
  }

  LocalDate day(DeviceRoll roll) {
    return roll.ordered().get(stretch.first()).at().toLocalDate();
  }
}
