package org.vestibule.release;

import java.util.List;

/**
 * What the sheet of a release says.
 *
 * @param title such as {@code Copies for teaching}
 * @param about lines below the title
 */
record Sheet(String title, List<String> about, List<SheetRow> rows) {
  Sheet {
    about = List.copyOf(about);
    rows = List.copyOf(rows);
  }

  static Sheet of(Order order, List<SheetRow> rows) {
    String head = "Release " + order.id();
    if (!order.purpose().named()) {
      return new Sheet(
          "Photographs: " + order.purpose().name(),
          List.of(head, "Copies without the patients' identity, for this purpose only."),
          rows);
    }
    String from = order.practice().isEmpty() ? "" : " from " + order.practice();
    return new Sheet(
        "Photographs: " + order.purpose().name(),
        List.of(
            head + " of " + order.day() + from + " for " + order.recipient(),
            "Copies of a patient's record, for this purpose only: keep them as your law demands."),
        rows);
  }
}
