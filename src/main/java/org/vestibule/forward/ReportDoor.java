package org.vestibule.forward;

import java.util.function.Consumer;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.net.AeTitle;
import org.vestibule.dicom.net.ListenerRules;
import org.vestibule.dicom.net.ReportListener;
import org.vestibule.dicom.net.ReportReceiver;

/** Where archives bring reports of storage commitment that come on an association of their own. */
public final class ReportDoor implements AutoCloseable {

  private final ReportListener listener;

  private ReportDoor(ReportListener listener) {
    this.listener = listener;
  }

  /**
   * Begins to listen.
   *
   * @param turnedAway told in a sentence of everybody who was not let in; called by several threads
   * @return refused if the port can't be had
   */
  public static Outcome<ReportDoor> open(
      ListenerRules rules, ReportSink reports, Consumer<String> turnedAway) {
    ReportReceiver receiver =
        new ReportReceiver() {
          @Override
          public boolean report(AeTitle from, org.vestibule.dicom.net.CommitmentReport report) {
            return reports.take(PendingReports.read(report));
          }

          @Override
          public void turnedAway(String words) {
            turnedAway.accept(words);
          }
        };
    return ReportListener.start(rules, receiver).map(ReportDoor::new);
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
