package org.vestibule.deid;

import java.util.List;
import java.util.Map;

/**
 * One row of Table E.1-1, or of our own stricter list.
 *
 * @param tag eight hexadecimal digits, X for any digit of a repeating group
 * @param vr the usual representation; empty for repeating groups
 * @param basic what the Basic Profile does; several where the attribute's type decides
 * @param withOption what an option does instead
 */
record ProfileRow(
    String tag, String vr, List<Action> basic, Map<ProfileOption, Action> withOption) {
  ProfileRow {
    basic = List.copyOf(basic);
    withOption = Map.copyOf(withOption);
  }
}
