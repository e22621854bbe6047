package org.vestibule.assign;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.vestibule.base.ContentHash;

/**
 * Everything one device took, in order.
 *
 * @param device that took it
 * @param ordered those with a time
 * @param timeless those without
 */
record DeviceRoll(Device device, List<Member> ordered, List<Member> timeless) {

  DeviceRoll {
    ordered = List.copyOf(ordered);
    timeless = List.copyOf(timeless);
  }

  /** Each content once, however many names it has. */
  static DeviceRoll of(Device device, List<Member> members) {
    List<Member> ordered = new ArrayList<>();
    List<Member> timeless = new ArrayList<>();
    Set<ContentHash> known = new HashSet<>();
    for (Member member : members) {
      ContentHash hash = member.seen().hash();
      if (hash == null || known.add(hash)) {
        (member.time().missing() ? timeless : ordered).add(member);
      }
    }
    ordered.sort(Member.ORDER);
    return new DeviceRoll(device, ordered, timeless);
  }
}
