package org.vestibule.dicom.net;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Understands A-ASSOCIATE-RQ and -AC. Items that are not known are passed over (PS3.8 9.3.1); one
 * that claims more bytes than there are ends the association.
 */
final class AssociateReader {

  private static final int MOST_CONTEXTS = 128;

  private final List<Associate.Context> contexts = new ArrayList<>();
  private final List<RoleSelection> roles = new ArrayList<>();
  private final Set<String> relational = new HashSet<>();
  private final String peer;
  private String applicationContext = "";
  private long mostBodyBytes;
  private String classUid = "";
  private String versionName = "";

  private AssociateReader(String peer) {
    this.peer = peer;
  }

  static Associate read(Pdu pdu, String peer) throws NetFailure {
    return new AssociateReader(peer).read(new BigEndian(pdu.body(), peer));
  }

  private Associate read(BigEndian body) throws NetFailure {
    int version = body.uint16();
    body.skip(2);
    String called = body.text(AeTitle.MOST);
    String calling = body.text(AeTitle.MOST);
    body.skip(32);
    if ((version & 1) == 0) {
      throw NetFailure.broken(
          NetFailure.Abort.INVALID_PARAMETER, peer + " speaks no version 1 of the protocol");
    }
    while (body.left() > 0) {
      int type = body.uint8();
      body.skip(1);
      item(type, body.part(body.uint16()));
    }
    return new Associate(
        called,
        calling,
        applicationContext,
        contexts,
        new UserInformation(mostBodyBytes, classUid, versionName, roles, relational));
  }

  private void item(int type, BigEndian item) throws NetFailure {
    switch (type) {
      case AssociateWriter.APPLICATION_CONTEXT -> applicationContext = item.text(item.left());
      case AssociateWriter.PROPOSED_CONTEXT, AssociateWriter.ANSWERED_CONTEXT -> context(item);
      case AssociateWriter.USER_INFORMATION -> user(item);
      default -> {}
    }
  }

  private void context(BigEndian item) throws NetFailure {
    if (contexts.size() == MOST_CONTEXTS) {
      throw NetFailure.broken(
          NetFailure.Abort.INVALID_PARAMETER,
          peer + " names more than " + MOST_CONTEXTS + " presentation contexts");
    }
    int id = item.uint8();
    item.skip(1);
    int result = item.uint8();
    item.skip(1);
    String abstractSyntax = "";
    List<String> syntaxes = new ArrayList<>();
    while (item.left() > 0) {
      int type = item.uint8();
      item.skip(1);
      BigEndian part = item.part(item.uint16());
      if (type == AssociateWriter.ABSTRACT_SYNTAX) {
        abstractSyntax = part.text(part.left());
      } else if (type == AssociateWriter.TRANSFER_SYNTAX) {
        syntaxes.add(part.text(part.left()));
      }
    }
    contexts.add(new Associate.Context(id, result, abstractSyntax, syntaxes));
  }

  private void user(BigEndian item) throws NetFailure {
    while (item.left() > 0) {
      int type = item.uint8();
      item.skip(1);
      BigEndian part = item.part(item.uint16());
      switch (type) {
        case AssociateWriter.MAXIMUM_LENGTH -> mostBodyBytes = part.uint32();
        case AssociateWriter.IMPLEMENTATION_CLASS -> classUid = part.text(part.left());
        case AssociateWriter.IMPLEMENTATION_VERSION -> versionName = part.text(part.left());
        case AssociateWriter.ROLE_SELECTION ->
            roles.add(
                new RoleSelection(part.text(part.uint16()), part.uint8() == 1, part.uint8() == 1));
        case AssociateWriter.EXTENDED_NEGOTIATION -> extended(part);
        default -> {}
      }
    }
  }

  /** Of what may be agreed on for a kind of query, the first byte (PS3.4 C.5.1.1) alone. */
  private void extended(BigEndian item) throws NetFailure {
    String sopClass = item.text(item.uint16());
    if (item.left() > 0 && item.uint8() == 1) {
      relational.add(sopClass);
    }
  }
}
