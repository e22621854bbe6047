package org.vestibule.forward;

import java.time.Clock;
import java.util.function.Consumer;
import org.vestibule.base.Outcome;

/** The lines as the settings describe them, over the network. */
public final class OutgoingLines implements Lines {

  private final Clock clock;

  public OutgoingLines(Clock clock) {
    this.clock = clock;
  }

  @Override
  public Outcome<Archive> archive(DestinationRules rules) {
    return rules.line() instanceof DestinationRules.Web
        ? WebArchive.of(rules, clock).map(archive -> archive)
        : DicomLine.of(rules, clock).map(archive -> archive);
  }

  @Override
  public Outcome<Door> listen(ForwardRules rules, ReportSink reports, Consumer<String> turnedAway) {
    ForwardRules.ReportPort port =
        rules.reports().orElseThrow(() -> new IllegalArgumentException("no port is named"));
    return ReportDoor.open(rules, port, clock, reports, turnedAway).map(OutgoingLines::door);
  }

  private static Door door(ReportDoor open) {
    return new Door() {
      @Override
      public int port() {
        return open.port();
      }

      @Override
      public void close() {
        open.close();
      }
    };
  }
}
