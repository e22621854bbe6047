package org.vestibule.assign;

import java.util.List;
import java.util.Map;
import org.vestibule.assign.WaitReason.Kind;

/** Joins what the manifest says of a photograph with what persons said of it elsewhere. */
final class SaidElsewhere {

  private SaidElsewhere() {}

  /**
   * All that was said; where two say different things of one fact, a reason to wait is added.
   *
   * @param row of the manifest; blank if there is none
   * @param elsewhere with each phone that it came by
   */
  static PersonWords joined(
      PersonWords row, List<PersonWords> elsewhere, List<WaitReason> reasons) {
    PersonWords all = row;
    for (PersonWords said : elsewhere) {
      all = joined(all, said, reasons);
    }
    return all;
  }

  private static PersonWords joined(PersonWords one, PersonWords other, List<WaitReason> reasons) {
    PersonWords all = one.by().isEmpty() ? PersonWords.by(other.by()) : PersonWords.by(one.by());
    for (Map.Entry<PhotoFact, String> fact : one.facts().entrySet()) {
      all = all.with(fact.getKey(), fact.getValue());
    }
    for (Map.Entry<PhotoFact, String> fact : other.facts().entrySet()) {
      String before = one.get(fact.getKey());
      if (before.isEmpty()) {
        all = all.with(fact.getKey(), fact.getValue());
      } else if (!before.equalsIgnoreCase(fact.getValue())) {
        reasons.add(contradiction(fact.getKey(), one.phone() != null));
      }
    }
    all = one.seen() ? all.seenByPerson() : all;
    PhoneStay stay = one.says(PhotoFact.VISIT) ? one.phone() : other.phone();
    return stay == null ? all : all.byPhone(stay);
  }

  private static WaitReason contradiction(PhotoFact fact, boolean twoPhones) {
    return twoPhones
        ? new WaitReason(
            Kind.CONTRADICTION,
            "it came by phone twice, and with another " + fact.word() + " each time",
            "look which is right and file it by hand")
        : new WaitReason(
            Kind.CONTRADICTION,
            "its row names another " + fact.word() + " than was said at the phone it came by",
            "find out which is right; then correct the row, or file it by hand");
  }
}
