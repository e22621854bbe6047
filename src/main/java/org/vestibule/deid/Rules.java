package org.vestibule.deid;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.vestibule.deid.AttributeTypes.Demand;
import org.vestibule.dicom.Dictionary;
import org.vestibule.dicom.Element;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.Vr;

/** Which action holds for an element at its place, under the options chosen. */
final class Rules {

  private static final int OVERLAYS = 0x6000;
  private static final int FIRST_DATA_SET_GROUP = 8;

  /**
   * Context Group Version and Local Version: anybody can look them up in PS3.16, so that a moved
   * one would give away by how many days this patient's dates were moved.
   */
  private static final Set<String> PUBLIC_DATES = Set.of("00080106", "00080107");

  private final Confidentiality profile;

  /** Attributes that stay at the top of the data set although the profile would change them. */
  private final Set<Integer> permitted;

  Rules(Confidentiality profile, Set<Integer> permitted) {
    this.profile = profile;
    this.permitted = Set.copyOf(permitted);
  }

  /**
   * The action for this element; one of D, Z, X and U where the type had to decide.
   *
   * @param parent keywords of the sequences around it, divided by {@code >}; empty at the top
   */
  Action action(Element element, String parent) {
    int tag = element.tag();
    if (!isSound(element)) {
      return Action.X;
    }
    if (parent.isEmpty() && permitted.contains(tag)) {
      return Action.K;
    }
    Optional<ProfileRow> row = ProfileTable.STANDARD.row(tag);
    if (row.isEmpty()) {
      return AttributeTypes.PHOTOGRAPHIC.knows(element.keyword()) ? Action.K : Action.X;
    }
    if (!permitted.isEmpty() && PUBLIC_DATES.contains(row.get().tag())) {
      return Action.K;
    }
    Action chosen = byOption(row.get(), element.vr());
    return chosen != null ? chosen : basic(row.get(), parent, element.keyword());
  }

  /** The Basic Profile's own action, for what an option could not clean. */
  Action basic(Element element, String parent) {
    return ProfileTable.STANDARD
        .row(element.tag())
        .map(row -> basic(row, parent, element.keyword()))
        .orElse(Action.X);
  }

  /** A private or unknown element, a representation that isn't the standard's: none is sound. */
  private static boolean isSound(Element element) {
    int tag = element.tag();
    int group = Tags.group(tag);
    if (group < FIRST_DATA_SET_GROUP || Tags.isPrivate(tag) || (group & 0xFF00) == OVERLAYS) {
      return false;
    }
    Optional<Dictionary.Entry> entry = Dictionary.entry(tag);
    if (entry.isEmpty()) {
      Optional<ProfileRow> row = ProfileTable.STANDARD.row(tag);
      return row.filter(r -> r.vr().equals(element.vr().name())).isPresent();
    }
    return entry.get().vrs().contains(element.vr());
  }

  private @Nullable Action byOption(ProfileRow row, Vr vr) {
    boolean moves = profile.has(ProfileOption.RETAIN_MODIFIED_DATES);
    if (moves && PUBLIC_DATES.contains(row.tag())) {
      return null;
    }
    if (moves && row.withOption().get(ProfileOption.RETAIN_MODIFIED_DATES) == Action.C) {
      boolean isDate = vr == Vr.DA || vr == Vr.DT || vr == Vr.TM;
      return isDate ? Action.C : null;
    }
    Action chosen = null;
    for (ProfileOption option : profile.options()) {
      Action action = row.withOption().get(option);
      if (action == Action.K || (action == Action.C && chosen == null)) {
        chosen = action;
      }
    }
    return chosen;
  }

  private static Action basic(ProfileRow row, String parent, String keyword) {
    List<Action> choice = row.basic();
    Demand demand = AttributeTypes.PHOTOGRAPHIC.demand(parent, keyword);
    if (choice.contains(Action.X) && (demand == Demand.NOTHING || choice.size() == 1)) {
      return Action.X;
    }
    if (choice.contains(Action.U) && (demand == Demand.VALUE || choice.size() == 1)) {
      return Action.U;
    }
    boolean mayBeEmpty = choice.contains(Action.Z) && demand != Demand.VALUE;
    return mayBeEmpty ? Action.Z : Action.D;
  }
}
