package org.vestibule.dicom.net;

import java.util.List;
import org.vestibule.base.Outcome;

/** Why the other side would not have an association, or broke it off, in words. */
final class PeerWords {

  private static final int TRANSIENT = 2;

  private record Row(
      String what, String result, String source, String reason, String words, String advice) {}

  private static final List<Row> ROWS =
      Rows.of("endings.csv").stream()
          .map(f -> new Row(f.get(0), f.get(1), f.get(2), f.get(3), f.get(4), f.get(5)))
          .toList();

  private PeerWords() {}

  /** PS3.8 9.3.4. */
  static NetFailure rejected(Pdu pdu, String peer) throws NetFailure {
    int result = pdu.shortField(1);
    int source = pdu.shortField(2);
    int reason = pdu.shortField(3);
    Row row = find("rejection", result, source, reason);
    return new NetFailure(
        result == TRANSIENT ? Outcome.Kind.BUSY : Outcome.Kind.REQUEST,
        NetFailure.Abort.NONE,
        peer
            + " rejected the association"
            + (result == TRANSIENT ? " for now" : "")
            + ": it "
            + row.words()
            + " (result "
            + result
            + ", source "
            + source
            + ", reason "
            + reason
            + ")",
        row.advice());
  }

  /** PS3.8 9.3.8. */
  static NetFailure aborted(Pdu pdu, String peer) throws NetFailure {
    int source = pdu.shortField(2);
    int reason = pdu.shortField(3);
    Row row = find("abort", 0, source, reason);
    return NetFailure.aborted(
        peer
            + " broke the association off: "
            + row.words()
            + " (source "
            + source
            + ", reason "
            + reason
            + ")",
        row.advice());
  }

  private static Row find(String what, int result, int source, int reason) {
    return ROWS.stream()
        .filter(row -> row.what().equals(what))
        .filter(row -> fits(row.result(), result))
        .filter(row -> fits(row.source(), source) && fits(row.reason(), reason))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("endings.csv has no row for all the rest"));
  }

  private static boolean fits(String cell, int value) {
    return cell.equals("*") || cell.equals(Integer.toString(value));
  }
}
