package org.vestibule.flow.night;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.vestibule.audit.SendReport;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.FetchedOrders;
import org.vestibule.flow.Practice;
import org.vestibule.flow.VisitOrders;

/** What a night does over the lines to the site: orders in, audit messages out. */
final class NightLines {

  private final Practice practice;

  NightLines(Practice practice) {
    this.practice = practice;
  }

  /**
   * Fetches the orders of the day before and of today, where there is a worklist; what a person
   * should know of it, each a sentence. A worklist that is down stops no photograph.
   */
  List<String> orders(String by) throws IOException {
    List<String> warnings = new ArrayList<>();
    if (!practice.settings().worklist().isThere()) {
      return warnings;
    }
    LocalDate today = LocalDate.now(practice.clock().withZone(practice.settings().zone()));
    for (LocalDate day : List.of(today.minusDays(1), today)) {
      Outcome<FetchedOrders> fetched = new VisitOrders(practice).fetch(day, by);
      if (fetched instanceof Refused<FetchedOrders> refused) {
        warnings.add("the orders of " + day + " could not be fetched: " + refused.sentence());
        return warnings;
      }
      fetched.orThrow().concerns().forEach(line -> warnings.add("orders of " + day + ": " + line));
    }
    return warnings;
  }

  /** Sends the audit messages that are still to be sent; what stands in the way. */
  List<String> audit() throws IOException {
    List<String> warnings = new ArrayList<>();
    practice.audit().told();
    SendReport sent = practice.audit().send();
    if (!sent.trouble().isEmpty()) {
      warnings.add(
          sent.waiting() + " audit messages wait for the site's server: " + sent.trouble());
    }
    if (sent.tooLong() > 0) {
      warnings.add(
          sent.tooLong()
              + " audit messages are too long for UDP and stay in the file alone; TLS takes any"
              + " length");
    }
    return warnings;
  }
}
