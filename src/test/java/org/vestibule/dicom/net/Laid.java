package org.vestibule.dicom.net;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.Locale;

/**
 * PDUs and messages put together by hand from the tables of PS3.8 9.3 and annex D and PS3.7 9.3,
 * 10.3 and E.1, sharing nothing with the program's own writers. The tables are from memory of the
 * 2024 edition; real peers hold them in {@code ToolkitPeersTest}.
 */
final class Laid {

  static final String EXPLICIT = "1.2.840.10008.1.2.1";
  static final String IMPLICIT = "1.2.840.10008.1.2";
  static final String APPLICATION = "1.2.840.10008.3.1.1.1";

  private Laid() {}

  static byte[] hex(String digits) {
    return HexFormat.of().parseHex(digits.replaceAll("\\s", ""));
  }

  static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  static byte[] join(byte[]... parts) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      out.writeBytes(part);
    }
    return out.toByteArray();
  }

  static byte[] big(long value, int bytes) {
    byte[] out = new byte[bytes];
    for (int i = 0; i < bytes; i++) {
      out[i] = (byte) (value >>> (8 * (bytes - 1 - i)));
    }
    return out;
  }

  static byte[] little(long value, int bytes) {
    byte[] out = new byte[bytes];
    for (int i = 0; i < bytes; i++) {
      out[i] = (byte) (value >>> (8 * i));
    }
    return out;
  }

  /** PS3.8 9.3.1: type, reserved, four bytes of length, big endian. */
  static byte[] pdu(int type, byte[]... body) {
    byte[] all = join(body);
    return join(big(type, 1), big(0, 1), big(all.length, 4), all);
  }

  /** PS3.8 9.3.2.1 and others: type, reserved, two bytes of length. */
  static byte[] item(int type, byte[]... content) {
    byte[] all = join(content);
    return join(big(type, 1), big(0, 1), big(all.length, 2), all);
  }

  /** PS3.8 Table 9-17, the contexts laid down by hand. */
  static byte[] accept(long mostBytes, byte[]... contexts) {
    return pdu(2, associate("ARCHIVE", "VESTIBULE", mostBytes, contexts));
  }

  /** PS3.8 Table 9-11. */
  static byte[] request(String called, String calling, byte[]... contexts) {
    return pdu(1, associate(called, calling, 16384, contexts));
  }

  private static byte[] associate(String called, String calling, long most, byte[]... contexts) {
    return join(
        hex("0001 0000"),
        ascii(String.format(Locale.ROOT, "%-16s%-16s", called, calling)),
        new byte[32],
        item(0x10, ascii(APPLICATION)),
        join(contexts),
        item(0x50, item(0x51, big(most, 4)), item(0x52, ascii("1.2.3.4"))));
  }

  /** PS3.8 Table 9-18. */
  static byte[] accepted(int id, int result, String syntax) {
    return item(0x21, new byte[] {(byte) id, 0, (byte) result, 0}, item(0x40, ascii(syntax)));
  }

  /** PS3.8 Table 9-13. */
  static byte[] proposed(int id, String abstractSyntax, String syntax) {
    return item(
        0x20,
        new byte[] {(byte) id, 0, 0, 0},
        item(0x30, ascii(abstractSyntax)),
        item(0x40, ascii(syntax)));
  }

  /** PS3.8 9.3.5 and annex E.2: header 3 is the last of a command, 2 the last of a data set. */
  static byte[] data(int context, int header, byte[] value) {
    return pdu(4, value(context, header, value));
  }

  static byte[] value(int context, int header, byte[] value) {
    return join(big(value.length + 2, 4), new byte[] {(byte) context, (byte) header}, value);
  }

  /** PS3.7 6.3.1: group and element, four bytes of length, value, all little endian. */
  static byte[] element(int element, byte[] value) {
    byte[] even = (value.length & 1) == 0 ? value : join(value, new byte[1]);
    return join(little(0, 2), little(element, 2), little(even.length, 4), even);
  }

  static byte[] us(int element, int value) {
    return element(element, little(value, 2));
  }

  static byte[] ui(int element, String uid) {
    return element(element, ascii(uid));
  }

  /** A command set with its group length in front. */
  static byte[] command(byte[]... elements) {
    byte[] all = join(elements);
    return join(element(0, little(all.length, 4)), all);
  }

  /** An answer (PS3.7 9.3): field, answered message, data set type and status. */
  static byte[] answer(int field, int messageId, int status) {
    return command(
        us(0x0100, field), us(0x0120, messageId), us(0x0800, 0x0101), us(0x0900, status));
  }

  static byte[] answerWithData(int field, int messageId, int status) {
    return command(us(0x0100, field), us(0x0120, messageId), us(0x0800, 1), us(0x0900, status));
  }

  /** PS3.7 10.3.1: an N-EVENT-REPORT-RQ about storage commitment. */
  static byte[] eventReport(int messageId, int eventType) {
    return command(
        ui(0x0002, "1.2.840.10008.1.20.1"),
        us(0x0100, 0x0100),
        us(0x0110, messageId),
        us(0x0800, 1),
        ui(0x1000, "1.2.840.10008.1.20.1.1"),
        us(0x1002, eventType));
  }

  /** An element in implicit VR. */
  static byte[] implicit(int group, int element, byte[] value) {
    byte[] even = (value.length & 1) == 0 ? value : join(value, new byte[1]);
    return join(little(group, 2), little(element, 2), little(even.length, 4), even);
  }

  /** A report in implicit VR (PS3.4 Table J.3-2): one object kept, one failed for this reason. */
  static byte[] report(String transaction, String kept, String failed, int reason) {
    byte[] keptItem = join(implicit(8, 0x1150, ascii("1.2.3")), implicit(8, 0x1155, ascii(kept)));
    byte[] failedItem =
        join(
            implicit(8, 0x1150, ascii("1.2.3")),
            implicit(8, 0x1155, ascii(failed)),
            implicit(8, 0x1197, little(reason, 2)));
    return join(
        implicit(8, 0x0054, ascii("KEEPER")),
        implicit(8, 0x1195, ascii(transaction)),
        implicit(8, 0x1198, implicit(0xFFFE, 0xE000, failedItem)),
        implicit(8, 0x1199, implicit(0xFFFE, 0xE000, keptItem)));
  }
}
