package org.vestibule.dicom.net;

import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.vestibule.base.Outcome;

/**
 * Requests and answers over one association that we opened.
 *
 * <p>While we wait for an answer the other side may ask too: an echo or a storage commitment report
 * is answered at once, a report once it is kept; anything else is refused (PS3.7 annex C, 0211H).
 */
final class Exchange {

  private static final int LAST_MESSAGE_ID = 0xFFFF;
  private static final Duration LAST_WORDS = Duration.ofSeconds(1);

  private final Connection connection;
  private final Timeouts timeouts;
  private final PduReader pdus;
  private final MessageReader reader;
  private final MessageWriter writer;
  private final Map<Integer, AgreedContext> contexts;
  private final Predicate<CommitmentReport> reports;
  private int messageId;

  Exchange(
      Connection connection,
      PduReader pdus,
      List<AgreedContext> agreed,
      long mostBodyBytes,
      Timeouts timeouts,
      Predicate<CommitmentReport> reports)
      throws NetFailure {
    this.connection = connection;
    this.timeouts = timeouts;
    this.reports = reports;
    this.pdus = pdus;
    this.contexts = agreed.stream().collect(Collectors.toMap(AgreedContext::id, c -> c));
    this.reader = new MessageReader(pdus, contexts.keySet(), connection.peer());
    this.writer = new MessageWriter(connection, mostBodyBytes, timeouts.silence());
  }

  /** The context for a service, or for objects written in one transfer syntax. */
  Optional<AgreedContext> context(String abstractSyntax, Optional<String> transferSyntax) {
    for (AgreedContext context : contexts.values()) {
      if (context.abstractSyntax().equals(abstractSyntax)
          && (transferSyntax.isEmpty() || transferSyntax.get().equals(context.transferSyntax()))) {
        return Optional.of(context);
      }
    }
    return Optional.empty();
  }

  int nextMessageId() {
    messageId = messageId == LAST_MESSAGE_ID ? 1 : messageId + 1;
    return messageId;
  }

  /** What is written behind a command, if anything. */
  @FunctionalInterface
  interface Body {
    void write(MessageWriter writer) throws IOException;
  }

  void send(AgreedContext context, CommandSet command, Body body) throws NetFailure {
    try {
      writer.command(context.id(), command);
      body.write(writer);
      writer.flush();
    } catch (PduBlock.SourceFailed here) {
      throw new NetFailure(
          Outcome.Kind.DAMAGE,
          NetFailure.Abort.NOT_SPECIFIED,
          "the file became shorter or unreadable while it was sent",
          "check the disk, and run verify");
    } catch (IOException failure) {
      throw lastWords(failure);
    }
  }

  void send(AgreedContext context, CommandSet command) throws NetFailure {
    send(context, command, w -> {});
  }

  /** A write failed: the other side may have said why before it closed. */
  private NetFailure lastWords(IOException failure) throws NetFailure {
    if (!connection.isOverdue()) {
      connection.allow(LAST_WORDS);
      try {
        while (reader.next("what it had to say").isPresent()) {
          // an answer that came before the end changes nothing
        }
      } catch (NetFailure end) {
        if (end.isAbortOfPeer()) {
          throw end;
        }
      }
    }
    return pdus.broken(failure, "it to take our data");
  }

  /** Waits for the answer to our last message. */
  Message answer(AgreedContext context, int request, String waitingFor) throws NetFailure {
    return answer(context, request, waitingFor, Deadline.after(timeouts.answer()));
  }

  /** Until when all answers to a question with several must be here. */
  Deadline forAllAnswers() {
    return Deadline.after(timeouts.allAnswers());
  }

  NetFailure late(String waitingFor) {
    return pdus.late(waitingFor);
  }

  /**
   * The same where the answer is one of several.
   *
   * @param all until when all of them must be here, whatever else the other side asks meanwhile
   */
  Message answer(AgreedContext context, int request, String waitingFor, Deadline all)
      throws NetFailure {
    Deadline end = Deadline.after(all.atMost(timeouts.answer()));
    while (true) {
      connection.allow(end.atMost(timeouts.answer()));
      Message message = reader.next(waitingFor).orElseThrow(() -> released(waitingFor));
      if ((message.command().number(CommandSet.COMMAND_FIELD) & CommandSet.ANSWER) == 0) {
        serve(message);
        continue;
      }
      CommandSet command = message.command();
      if (command.number(CommandSet.COMMAND_FIELD) != (request | CommandSet.ANSWER)
          || command.number(CommandSet.ANSWERED_MESSAGE_ID) != messageId
          || message.contextId() != context.id()) {
        throw NetFailure.broken(
            NetFailure.Abort.NOT_SPECIFIED,
            connection.peer() + " answered something that was not asked, instead of " + waitingFor);
      }
      if (command.number(CommandSet.STATUS) < 0) {
        throw NetFailure.broken(
            NetFailure.Abort.NOT_SPECIFIED, connection.peer() + " sent an answer without a status");
      }
      connection.allowAll();
      return message;
    }
  }

  private NetFailure released(String waitingFor) {
    try {
      connection.write(Pdu.release(Pdu.RELEASE_RP).toBytes());
    } catch (IOException alreadyGone) {
      // It wanted the end, and has it.
    }
    return NetFailure.passing(
        connection.peer() + " ended the association instead of " + waitingFor,
        "see its log; try again");
  }

  /** Answers what the other side asks of us. */
  private void serve(Message message) throws NetFailure {
    CommandSet command = message.command();
    int field = command.number(CommandSet.COMMAND_FIELD);
    if (field == CommandSet.CANCEL_RQ) {
      return;
    }
    AgreedContext context = contexts.get(message.contextId());
    if (context == null) {
      throw new IllegalStateException("a message in a context that was not agreed was let in");
    }
    int status = Statuses.UNRECOGNIZED_OPERATION;
    if (field == CommandSet.ECHO_RQ) {
      status = Statuses.SUCCESS;
    } else if (field == CommandSet.EVENT_REPORT_RQ) {
      status =
          Statuses.ofReport(
              CommitmentReport.read(message.data(), context.transferSyntax()), reports);
    }
    send(context, CommandSet.answerTo(command, status));
  }

  /** Serves one request of the other side if it comes within this time. */
  boolean serveOne(Duration limit) throws NetFailure {
    try {
      if (!reader.hasMore() && !connection.isReadable(limit)) {
        return false;
      }
    } catch (IOException failure) {
      throw pdus.broken(failure, "a storage commitment report");
    }
    connection.allow(timeouts.answer());
    String waitingFor = "a storage commitment report";
    Message message = reader.next(waitingFor).orElseThrow(() -> released(waitingFor));
    if ((message.command().number(CommandSet.COMMAND_FIELD) & CommandSet.ANSWER) != 0) {
      throw NetFailure.broken(
          NetFailure.Abort.NOT_SPECIFIED, connection.peer() + " answered what nobody asked");
    }
    serve(message);
    connection.allowAll();
    return true;
  }
}
