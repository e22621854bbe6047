package org.vestibule.dicom.net;

import java.io.ByteArrayOutputStream;
import java.util.Optional;
import java.util.Set;

/** Puts messages together from the fragments in P-DATA-TF PDUs (PS3.8 9.3.5 and annex E). */
final class MessageReader {

  private static final int COMMAND = 1;
  private static final int LAST = 2;
  private static final int MOST_COMMAND_BYTES = 65536;

  /** More than ten thousand reported instances need. */
  static final int MOST_DATA_BYTES = 8 << 20;

  private final PduReader pdus;
  private final Set<Integer> contexts;
  private final String peer;
  private BigEndian pdu;

  private int contextId;
  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
  private Optional<CommandSet> command = Optional.empty();

  /**
   * @param contexts those that were accepted
   */
  MessageReader(PduReader pdus, Set<Integer> contexts, String peer) {
    this.pdus = pdus;
    this.contexts = Set.copyOf(contexts);
    this.peer = peer;
    this.pdu = new BigEndian(new byte[0], peer);
  }

  /**
   * The next whole message, or nothing where the other side asks to end the association.
   *
   * @throws NetFailure where it aborts, breaks the protocol or the connection fails
   */
  Optional<Message> next(String waitingFor) throws NetFailure {
    while (true) {
      while (pdu.left() > 0) {
        Optional<Message> message = fragment();
        if (message.isPresent()) {
          return message;
        }
      }
      Pdu next = pdus.next(waitingFor);
      switch (next.type()) {
        case Pdu.DATA -> pdu = new BigEndian(next.body(), peer);
        case Pdu.RELEASE_RQ -> {
          return Optional.empty();
        }
        case Pdu.ABORT -> throw PeerWords.aborted(next, peer);
        default ->
            throw NetFailure.broken(
                NetFailure.Abort.UNEXPECTED_PDU,
                peer + " sent a PDU of type " + next.type() + " instead of " + waitingFor);
      }
    }
  }

  /** True if fragments of the last PDU are not looked at yet. */
  boolean hasMore() {
    return pdu.left() > 0;
  }

  private Optional<Message> fragment() throws NetFailure {
    BigEndian value = pdu.part(pdu.uint32());
    int context = value.uint8();
    int header = value.uint8();
    if (!contexts.contains(context)) {
      throw NetFailure.broken(
          NetFailure.Abort.INVALID_PARAMETER,
          peer + " sent data in the presentation context " + context + ", which was not agreed");
    }
    boolean isCommand = (header & COMMAND) != 0;
    boolean begins = command.isEmpty() && bytes.size() == 0;
    if (isCommand != command.isEmpty() || (!begins && context != contextId)) {
      throw NetFailure.broken(
          NetFailure.Abort.INVALID_PARAMETER, peer + " mixed the fragments of two messages");
    }
    contextId = context;
    add(value, isCommand ? MOST_COMMAND_BYTES : MOST_DATA_BYTES);
    return (header & LAST) == 0 ? Optional.empty() : ended();
  }

  private void add(BigEndian value, int most) throws NetFailure {
    if (value.left() > most - bytes.size()) {
      throw NetFailure.broken(
          NetFailure.Abort.NOT_SPECIFIED, peer + " sent a message of more than " + most + " bytes");
    }
    value.copyTo(bytes);
  }

  private Optional<Message> ended() throws NetFailure {
    byte[] whole = bytes.toByteArray();
    bytes.reset();
    if (command.isEmpty()) {
      CommandSet read = CommandSet.read(whole, peer);
      if (read.hasDataSet()) {
        command = Optional.of(read);
        return Optional.empty();
      }
      return Optional.of(new Message(contextId, read, new byte[0]));
    }
    Message message = new Message(contextId, command.get(), whole);
    command = Optional.empty();
    return Optional.of(message);
  }
}
