package org.vestibule.check;

import java.util.List;

/**
 * The context groups that a code is taken from, defined (DCID) or suggested (BCID; PS3.3 8.2).
 * Written {@code D:4062|4063}.
 */
record CodeBinding(boolean defined, List<String> groups) {

  CodeBinding {
    groups = List.copyOf(groups);
  }

  static CodeBinding parse(String text) {
    return new CodeBinding(text.startsWith("D:"), List.of(text.substring(2).split("\\|", -1)));
  }

  String words() {
    return "CID " + String.join(" or ", groups);
  }
}
