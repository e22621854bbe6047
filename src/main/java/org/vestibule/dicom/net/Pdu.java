package org.vestibule.dicom.net;

import java.nio.ByteBuffer;

/**
 * A protocol data unit: one byte of type, one reserved, four of length, big endian, and its body
 * (PS3.8 9.3.1).
 */
@SuppressWarnings("ArrayRecordComponent") // Read once, never compared.
record Pdu(int type, byte[] body) {

  static final int ASSOCIATE_RQ = 1;
  static final int ASSOCIATE_AC = 2;
  static final int ASSOCIATE_RJ = 3;
  static final int DATA = 4;
  static final int RELEASE_RQ = 5;
  static final int RELEASE_RP = 6;
  static final int ABORT = 7;

  static final int HEADER_BYTES = 6;

  /** The longest body that we take, which is also the maximum that we announce (PS3.8 D.1). */
  static final int MOST_BODY_BYTES = 65536;

  private static final int SHORT_BODY_BYTES = 4;

  /** PS3.8 9.3.4: result, source and reason of a rejection. */
  static Pdu rejection(int result, int source, int reason) {
    return new Pdu(ASSOCIATE_RJ, new byte[] {0, (byte) result, (byte) source, (byte) reason});
  }

  /** PS3.8 9.3.6 and 9.3.7. */
  static Pdu release(int type) {
    return new Pdu(type, new byte[SHORT_BODY_BYTES]);
  }

  /** PS3.8 9.3.8: from the service provider (source 2), with a reason. */
  static Pdu abort(NetFailure.Abort why) {
    return new Pdu(ABORT, new byte[] {0, 0, 2, (byte) why.reason});
  }

  /** PS3.8 9.3.8: from the service user (source 0). */
  static Pdu abortByUser() {
    return new Pdu(ABORT, new byte[SHORT_BODY_BYTES]);
  }

  /** The byte of a body that has four, as those of rejection, release and abort have. */
  int shortField(int index) throws NetFailure {
    if (body.length != SHORT_BODY_BYTES) {
      throw NetFailure.broken(
          NetFailure.Abort.NONE,
          "a PDU of type " + type + " has " + body.length + " bytes instead of 4");
    }
    return body[index] & 0xFF;
  }

  ByteBuffer toBytes() {
    ByteBuffer bytes = ByteBuffer.allocateDirect(HEADER_BYTES + body.length);
    return bytes.put((byte) type).put((byte) 0).putInt(body.length).put(body).flip();
  }
}
