package org.vestibule.forward;

import java.net.InetSocketAddress;
import java.time.Clock;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.random.RandomGenerator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.net.AeTitle;
import org.vestibule.dicom.net.ListenerRules;
import org.vestibule.dicom.net.ReportListener;
import org.vestibule.dicom.net.ReportReceiver;
import org.vestibule.dicom.net.Timeouts;
import org.vestibule.keys.TlsSide;
import org.vestibule.store.ledger.Ledger;

/** Where archives bring reports of storage commitment that come on an association of their own. */
public final class ReportDoor implements AutoCloseable {

  private static final int MOST_AT_ONCE = 8;

  private final ReportListener listener;

  private ReportDoor(ReportListener listener) {
    this.listener = listener;
  }

  /**
   * Begins to listen, on all addresses of this computer, for the archives of the settings.
   *
   * @param port where; the settings have one
   * @param who stands in the history of deliveries
   * @param turnedAway told in a sentence of everybody who was not let in; called by several threads
   * @return refused if the port can't be had, or a title or a file for TLS is not as it must be
   */
  public static Outcome<ReportDoor> open(
      ForwardRules all,
      ForwardRules.ReportPort port,
      Ledger ledger,
      String who,
      Clock clock,
      RandomGenerator random,
      Consumer<String> turnedAway) {
    ReportSink sink =
        new LedgerReports(ledger, new Changes(all, new RetryPauses(all, random), clock), who);
    return open(all, port, clock, sink, turnedAway);
  }

  static Outcome<ReportDoor> open(
      ForwardRules all,
      ForwardRules.ReportPort port,
      Clock clock,
      ReportSink sink,
      Consumer<String> turnedAway) {
    Outcome<Optional<TlsSide>> tls =
        port.tls().isPresent()
            ? port.tls().get().server(clock).map(Optional::of)
            : Outcome.done(Optional.empty());
    return tls.then(
            side ->
                AeTitle.read(port.title())
                    .map(title -> rules(all, port.port(), title, side))
                    .then(rules -> ReportListener.start(rules, new Receiver(sink, turnedAway))))
        .map(ReportDoor::new);
  }

  /** An archive calls by the title that it is called by. */
  private static ListenerRules rules(
      ForwardRules all, int port, AeTitle own, Optional<TlsSide> tls) {
    Set<AeTitle> callers =
        all.destinations().stream()
            .map(DestinationRules::line)
            .filter(DestinationRules.Dicom.class::isInstance)
            .map(line -> AeTitle.read(((DestinationRules.Dicom) line).called()))
            .flatMap(ReportDoor::done)
            .collect(Collectors.toSet());
    return new ListenerRules(
        new InetSocketAddress(port).getAddress(),
        port,
        own,
        callers,
        tls,
        Timeouts.DEFAULT,
        MOST_AT_ONCE);
  }

  private static Stream<AeTitle> done(Outcome<AeTitle> title) {
    return title instanceof Outcome.Done<AeTitle> proper
        ? Stream.of(proper.value())
        : Stream.empty();
  }

  /** Hands on to the ledger. */
  private record Receiver(ReportSink sink, Consumer<String> away) implements ReportReceiver {

    @Override
    public boolean report(AeTitle from, org.vestibule.dicom.net.CommitmentReport report) {
      return sink.take(PendingReports.read(report));
    }

    @Override
    public void turnedAway(String words) {
      away.accept(words);
    }
  }

  /** Where it listens. */
  public int port() {
    return listener.port();
  }

  @Override
  public void close() {
    listener.close();
  }
}
