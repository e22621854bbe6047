package org.vestibule.dicom.net;

import java.io.IOException;
import java.time.Duration;

/**
 * An association that came about: what is spoken over it, and its end.
 *
 * @param relational true if the other side grants relational queries (PS3.4 C.5.1.1)
 */
record Opened(
    Connection connection,
    PduReader pdus,
    Exchange exchange,
    Timeouts timeouts,
    boolean relational) {

  private static final Duration SHORT = Duration.ofSeconds(1);
  private static final int MOST_LEFTOVERS = 10_000;

  /** PS3.8 9.2.3: asks for the end; both sides may ask at the same moment (AR-8, AR-9). */
  void release() throws NetFailure {
    String waitingFor = "the answer to our release";
    connection.allow(timeouts.release());
    try {
      connection.write(Pdu.release(Pdu.RELEASE_RQ).toBytes());
      for (int i = 0; i < MOST_LEFTOVERS; i++) {
        Pdu pdu = pdus.next(waitingFor);
        switch (pdu.type()) {
          case Pdu.RELEASE_RP -> {
            connection.close(SHORT);
            return;
          }
          case Pdu.RELEASE_RQ -> connection.write(Pdu.release(Pdu.RELEASE_RP).toBytes());
          case Pdu.DATA -> {} // AR-6: may still be on its way
          case Pdu.ABORT -> throw PeerWords.aborted(pdu, connection.peer());
          default -> throw unexpected(pdu, waitingFor);
        }
      }
      throw NetFailure.broken(
          NetFailure.Abort.NOT_SPECIFIED,
          connection.peer() + " went on sending instead of " + waitingFor);
    } catch (IOException failure) {
      throw pdus.broken(failure, waitingFor);
    }
  }

  private NetFailure unexpected(Pdu pdu, String waitingFor) {
    return NetFailure.broken(
        NetFailure.Abort.UNEXPECTED_PDU,
        connection.peer() + " sent a PDU of type " + pdu.type() + " instead of " + waitingFor);
  }

  /** Ends what failed; the other side hears of it where the failure is its own. */
  void end(NetFailure.Abort abort) {
    end(connection, abort);
  }

  static void end(Connection connection, NetFailure.Abort abort) {
    if (abort != NetFailure.Abort.NONE) {
      tell(connection, Pdu.abort(abort));
    }
    connection.close();
  }

  void abort() {
    tell(connection, Pdu.abortByUser());
    connection.close();
  }

  private static void tell(Connection connection, Pdu pdu) {
    connection.allow(SHORT);
    try {
      connection.write(pdu.toBytes());
    } catch (IOException alreadyGone) {
      // It is being broken off anyway.
    }
  }
}
