package org.vestibule.flow.look;

import org.vestibule.intake.FileNames;

/** Text made safe for HTML, in content and in quoted attributes. */
final class Html {

  private Html() {}

  /**
   * Text as it may stand in a page; control and direction-changing characters are escaped first.
   */
  static String text(String text) {
    String shown = FileNames.shown(text);
    StringBuilder out = new StringBuilder(shown.length() + 16);
    for (int i = 0; i < shown.length(); i++) {
      char c = shown.charAt(i);
      switch (c) {
        case '&' -> out.append("&amp;");
        case '<' -> out.append("&lt;");
        case '>' -> out.append("&gt;");
        case '"' -> out.append("&quot;");
        case '\'' -> out.append("&#39;");
        default -> out.append(c);
      }
    }
    return out.toString();
  }
}
