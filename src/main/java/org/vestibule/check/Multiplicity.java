package org.vestibule.check;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Value multiplicity as PS3.6 writes it: 1, 2-4, 1-n, 2-2n, and alternatives of these. */
final class Multiplicity {

  private static final Pattern RANGE = Pattern.compile("(\\d+)(?:-(\\d*)(n?))?");

  private Multiplicity() {}

  static boolean fits(String vm, int count) {
    for (String alternative : vm.split("/", -1)) {
      if (alternativeFits(alternative, count)) {
        return true;
      }
    }
    return false;
  }

  private static boolean alternativeFits(String vm, int count) {
    Matcher range = RANGE.matcher(vm);
    if (!range.matches()) {
      throw new IllegalStateException("the table holds the unreadable multiplicity " + vm);
    }
    int least = Integer.parseInt(range.group(1));
    String most = range.group(2);
    if (most == null) {
      return count == least;
    }
    if (range.group(3).isEmpty()) {
      return count >= least && count <= Integer.parseInt(most);
    }
    int step = most.isEmpty() ? 1 : Integer.parseInt(most);
    return count >= least && count % step == 0;
  }
}
