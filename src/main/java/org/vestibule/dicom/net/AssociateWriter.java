package org.vestibule.dicom.net;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Lays A-ASSOCIATE-RQ and -AC down as bytes (PS3.8 Tables 9-11 to 9-20 and D.1-1, PS3.7 D.3.3). */
final class AssociateWriter {

  static final int APPLICATION_CONTEXT = 0x10;
  static final int PROPOSED_CONTEXT = 0x20;
  static final int ANSWERED_CONTEXT = 0x21;
  static final int ABSTRACT_SYNTAX = 0x30;
  static final int TRANSFER_SYNTAX = 0x40;
  static final int USER_INFORMATION = 0x50;
  static final int MAXIMUM_LENGTH = 0x51;
  static final int IMPLEMENTATION_CLASS = 0x52;
  static final int ROLE_SELECTION = 0x54;
  static final int IMPLEMENTATION_VERSION = 0x55;
  static final int EXTENDED_NEGOTIATION = 0x56;

  private static final int RESERVED_BYTES = 32;

  private AssociateWriter() {}

  static Pdu request(Associate request) {
    return new Pdu(Pdu.ASSOCIATE_RQ, body(request, PROPOSED_CONTEXT));
  }

  static Pdu answer(Associate answer) {
    return new Pdu(Pdu.ASSOCIATE_AC, body(answer, ANSWERED_CONTEXT));
  }

  private static byte[] body(Associate associate, int contextItem) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    number(1, 2, out); // protocol version 1
    number(0, 2, out);
    out.writeBytes(title(associate.called()));
    out.writeBytes(title(associate.calling()));
    out.writeBytes(new byte[RESERVED_BYTES]);
    item(APPLICATION_CONTEXT, ascii(associate.applicationContext()), out);
    for (Associate.Context context : associate.contexts()) {
      item(contextItem, context(context), out);
    }
    item(USER_INFORMATION, user(associate.user()), out);
    return out.toByteArray();
  }

  private static byte[] context(Associate.Context context) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(new byte[] {(byte) context.id(), 0, (byte) context.result(), 0});
    if (!context.abstractSyntax().isEmpty()) {
      item(ABSTRACT_SYNTAX, ascii(context.abstractSyntax()), out);
    }
    for (String syntax : context.transferSyntaxes()) {
      item(TRANSFER_SYNTAX, ascii(syntax), out);
    }
    return out.toByteArray();
  }

  private static byte[] user(UserInformation user) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream length = new ByteArrayOutputStream();
    number(user.mostBodyBytes(), 4, length);
    item(MAXIMUM_LENGTH, length.toByteArray(), out);
    item(IMPLEMENTATION_CLASS, ascii(user.classUid()), out);
    for (RoleSelection role : user.roles()) {
      item(ROLE_SELECTION, role(role), out);
    }
    item(IMPLEMENTATION_VERSION, ascii(user.versionName()), out);
    for (String sopClass : user.relational()) {
      item(EXTENDED_NEGOTIATION, relational(sopClass), out);
    }
    return out.toByteArray();
  }

  private static byte[] role(RoleSelection role) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] uid = ascii(role.sopClass());
    number(uid.length, 2, out);
    out.writeBytes(uid);
    out.write(role.user() ? 1 : 0);
    out.write(role.provider() ? 1 : 0);
    return out.toByteArray();
  }

  /** PS3.7 Table D.3-11, with the first byte of PS3.4 C.5.1.1 alone: what follows it is 0. */
  private static byte[] relational(String sopClass) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] uid = ascii(sopClass);
    number(uid.length, 2, out);
    out.writeBytes(uid);
    out.write(1);
    return out.toByteArray();
  }

  private static void item(int type, byte[] content, ByteArrayOutputStream out) {
    out.write(type);
    out.write(0);
    number(content.length, 2, out);
    out.writeBytes(content);
  }

  private static byte[] title(String title) {
    byte[] sixteen = new byte[AeTitle.MOST];
    Arrays.fill(sixteen, (byte) ' ');
    byte[] letters = ascii(title);
    System.arraycopy(letters, 0, sixteen, 0, Math.min(letters.length, sixteen.length));
    return sixteen;
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  private static void number(long number, int bytes, ByteArrayOutputStream out) {
    for (int i = bytes - 1; i >= 0; i--) {
      out.write((int) (number >>> (8 * i)));
    }
  }
}
