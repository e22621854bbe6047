package org.vestibule.release;

import java.util.List;

/**
 * What the sheet of a release says.
 *
 * @param title such as {@code Photographs: Teaching}
 * @param about lines below the title
 * @param words in whose language all of it is said
 */
record Sheet(String title, List<String> about, List<SheetRow> rows, SheetWords words) {
  Sheet {
    about = List.copyOf(about);
    rows = List.copyOf(rows);
  }

  static Sheet of(Order order, List<SheetRow> rows) {
    SheetWords words = new SheetWords(order.language());
    String title = words.say("title", words.purpose(order.purpose()));
    if (!order.purpose().named()) {
      return new Sheet(
          title,
          List.of(words.say("release", order.id()), words.say("about-unnamed")),
          rows,
          words);
    }
    String head =
        words.say(
            order.practice().isEmpty() ? "release-of" : "release-of-from",
            order.id(),
            words.day(order.day()),
            order.recipient(),
            order.practice());
    return new Sheet(title, List.of(head, words.say("about-named")), rows, words);
  }
}
