package org.vestibule.dicom.net;

import java.io.IOException;
import java.nio.ByteBuffer;
import org.vestibule.keys.TlsFailure;

/** Takes one PDU after the other off a connection; nothing longer than the limit is read. */
final class PduReader {

  private static final int TLS_ALERT = 0x15;
  private static final int TLS_HANDSHAKE = 0x16;

  private final Connection connection;
  private boolean spoken;
  private final byte[] header = new byte[Pdu.HEADER_BYTES];

  PduReader(Connection connection) {
    this.connection = connection;
  }

  /**
   * The next PDU.
   *
   * @param waitingFor what was due, as it stands in a sentence: "the answer to the echo"
   */
  Pdu next(String waitingFor) throws NetFailure {
    try {
      return read(waitingFor);
    } catch (IOException failure) {
      throw broken(failure, waitingFor);
    }
  }

  private Pdu read(String waitingFor) throws IOException, NetFailure {
    int got = connection.read(header, header.length);
    if (got < header.length) {
      throw got == 0 ? closed(waitingFor) : cut();
    }
    int type = header[0] & 0xFF;
    if (type < Pdu.ASSOCIATE_RQ || type > Pdu.ABORT) {
      throw foreign(type);
    }
    long length = ByteBuffer.wrap(header).getInt(2) & 0xFFFFFFFFL;
    if (length > Pdu.MOST_BODY_BYTES) {
      throw NetFailure.broken(
          NetFailure.Abort.INVALID_PARAMETER,
          connection.peer()
              + " sent a PDU of "
              + length
              + " bytes, more than the "
              + Pdu.MOST_BODY_BYTES
              + " that we take");
    }
    byte[] body = new byte[(int) length];
    if (connection.read(body, body.length) < body.length) {
      throw cut();
    }
    spoken = true;
    return new Pdu(type, body);
  }

  private NetFailure closed(String waitingFor) {
    return NetFailure.passing(
        connection.peer() + " closed the connection instead of " + waitingFor, advice());
  }

  private String advice() {
    if (spoken) {
      return "see its log and the network; try again";
    }
    return connection.isTls()
        ? "see its log; it may not accept our certificate"
        : "see its log; it may want TLS, or not know our title";
  }

  private NetFailure cut() {
    return NetFailure.passing(
        connection.peer() + " closed the connection in the middle of a PDU",
        "see its log and the network; try again");
  }

  private NetFailure foreign(int type) {
    boolean tls = type == TLS_ALERT || type == TLS_HANDSHAKE;
    return NetFailure.broken(
        NetFailure.Abort.UNRECOGNIZED_PDU,
        connection.peer()
            + (tls
                ? " speaks TLS on this port but we were told to call it without"
                : " sent bytes that are no DICOM (a PDU of type " + type + ")"));
  }

  NetFailure late(String waitingFor) {
    return NetFailure.passing(
        connection.peer() + " was silent too long: we waited for " + waitingFor,
        "see its log; try again, or allow it more time in the settings");
  }

  /** What a failed read or write means. */
  NetFailure broken(IOException failure, String waitingFor) {
    if (connection.isOverdue()) {
      return late(waitingFor);
    }
    if (TlsFailure.isTls(failure)) {
      return NetFailure.of(TlsFailure.refused(failure, connection.peer()));
    }
    return NetFailure.passing(
        "the connection to " + connection.peer() + " was cut while we waited for " + waitingFor,
        advice());
  }
}
