package org.vestibule.check;

import java.util.ArrayList;
import java.util.List;

/**
 * The values that the standard allows, closed (EV, enumerated) or open (DT, defined terms; PS3.5
 * 3.10). Written {@code EV:a|b} for every value, {@code EV2:a|b} for the second, several divided by
 * semicolons.
 */
record ValueList(boolean closed, int index, List<String> allowed) {

  private static final int EVERY = 0;

  static List<ValueList> parse(String text) {
    List<ValueList> lists = new ArrayList<>();
    if (text.isEmpty()) {
      return lists;
    }
    for (String part : text.split(";", -1)) {
      int colon = part.indexOf(':');
      String digits = part.substring(2, colon);
      lists.add(
          new ValueList(
              part.startsWith("EV"),
              digits.isEmpty() ? EVERY : Integer.parseInt(digits),
              List.of(part.substring(colon + 1).split("\\|", -1))));
    }
    return lists;
  }

  boolean fits(List<String> values) {
    if (index == EVERY) {
      return allowed.containsAll(values);
    }
    return values.size() < index || allowed.contains(values.get(index - 1));
  }

  String words() {
    String which = index == EVERY ? "" : "value " + index + " ";
    String list = String.join(", ", allowed.stream().filter(v -> !v.isEmpty()).toList());
    return which
        + (closed ? "must be " : "is usually ")
        + (allowed.size() > 1 ? "one of " : "")
        + list;
  }
}
