package org.vestibule.cli;

import org.vestibule.flow.delivering.DeliveryReport;
import org.vestibule.flow.delivering.DeliveryReport.OfDestination;
import org.vestibule.store.ledger.DeliveryState;

/** Prints what a delivery came to. */
final class ForwardPrinter {

  private final Console console;

  ForwardPrinter(Console console) {
    this.console = console;
  }

  void print(DeliveryReport report, boolean planned) {
    Table table =
        new Table("archive", "confirmed now", "confirmed", "sent", "waiting", "failed", "refused");
    for (OfDestination one : report.destinations()) {
      table.row(
          one.name(),
          planned ? "-" : number(one.confirmedNow()),
          number(one.count(DeliveryState.CONFIRMED)),
          number(one.count(DeliveryState.SENT)),
          number(one.count(DeliveryState.WAITING)),
          number(one.count(DeliveryState.FAILED)),
          number(one.count(DeliveryState.REFUSED)));
    }
    table.lines(0).forEach(console::say);
    for (OfDestination one : report.destinations()) {
      one.left()
          .ifPresent(
              why -> {
                console.say(one.name() + " was left early.");
                console.reason(2, why.reason(), why.advice());
              });
      if (one.deadEnds() > 0) {
        deadEnds(one.name(), one.deadEnds());
      }
    }
    report.warnings().forEach(warning -> console.wrapped(0, Ended.of(warning)));
    report.notes().forEach(note -> console.wrapped(0, Ended.of(note)));
    if (report.removed() > 0) {
      console.say(
          Counted.of(report.removed(), "file") + " left the inbox, confirmed by every archive.");
    }
  }

  /** That objects came to an end on their way to an archive, and where it is said why. */
  void deadEnds(String archive, int count) {
    console.wrapped(
        0,
        Counted.of(count, "object")
            + (count == 1 ? " needs" : " need")
            + " a person at "
            + archive
            + "; \"vestibule forward list\" says which, and why.");
  }

  private static String number(int count) {
    return Integer.toString(count);
  }
}
