package org.vestibule.dicom.net;

import java.io.IOException;
import java.nio.channels.SocketChannel;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.vestibule.base.Outcome;

/** One association that somebody else opened with us (PS3.8 7.1, PS3.7 10.1.1 and 9.1.5). */
final class CalledSession {

  private static final String CALLER = "the caller";

  private final SocketChannel channel;
  private final ListenerRules rules;
  private final ReportReceiver receiver;

  CalledSession(SocketChannel channel, ListenerRules rules, ReportReceiver receiver) {
    this.channel = channel;
    this.rules = rules;
    this.receiver = receiver;
  }

  void run() {
    Watchdog watchdog = new Watchdog(channel);
    watchdog.arm(rules.timeouts().connect());
    try (Connection connection =
        Connection.over(channel, watchdog, rules.tls(), "caller", 0, CALLER)) {
      try {
        serve(connection);
      } catch (NetFailure failure) {
        receiver.turnedAway(((Outcome.Refused<?>) failure.outcome()).sentence());
        Opened.end(connection, failure.abort());
      } catch (RuntimeException defect) {
        receiver.turnedAway(
            "the program failed on a call ("
                + defect.getClass().getSimpleName()
                + "): see that the ledger can be written, and report it otherwise");
        Opened.end(connection, NetFailure.Abort.NOT_SPECIFIED);
      }
    } catch (NetFailure failure) {
      receiver.turnedAway(((Outcome.Refused<?>) failure.outcome()).sentence());
    }
  }

  private void serve(Connection connection) throws NetFailure {
    PduReader pdus = new PduReader(connection);
    String waitingFor = "a request for an association";
    connection.allow(rules.timeouts().association());
    Pdu first = pdus.next(waitingFor);
    if (first.type() != Pdu.ASSOCIATE_RQ) {
      throw NetFailure.broken(
          NetFailure.Abort.UNEXPECTED_PDU,
          CALLER + " sent a PDU of type " + first.type() + " instead of " + waitingFor);
    }
    Associate request = AssociateReader.read(first, CALLER);
    CallJudge judge = new CallJudge(rules, request);
    Optional<Pdu> rejection = judge.rejection();
    if (rejection.isPresent()) {
      receiver.turnedAway(judge.words());
      write(connection, pdus, rejection.get());
      return;
    }
    List<AgreedContext> agreed = judge.agreed();
    write(connection, pdus, AssociateWriter.answer(judge.answer()));
    AeTitle from = new AeTitle(request.calling());
    messages(connection, pdus, agreed, request.user().mostBodyBytes(), from);
  }

  private void messages(
      Connection connection,
      PduReader pdus,
      List<AgreedContext> agreed,
      long mostBodyBytes,
      AeTitle from)
      throws NetFailure {
    Map<Integer, AgreedContext> contexts =
        agreed.stream().collect(Collectors.toMap(AgreedContext::id, c -> c));
    MessageReader reader = new MessageReader(pdus, contexts.keySet(), CALLER);
    MessageWriter writer = new MessageWriter(connection, mostBodyBytes, rules.timeouts().silence());
    Deadline end = Deadline.after(rules.timeouts().stay());
    while (true) {
      if (end.isOver()) {
        throw new NetFailure(
            Outcome.Kind.BUSY,
            NetFailure.Abort.NOT_SPECIFIED,
            CALLER + " stayed too long",
            "see in the archive's log what it wanted");
      }
      connection.allow(end.atMost(rules.timeouts().silence()));
      Optional<Message> message = reader.next("a message");
      if (message.isEmpty()) {
        write(connection, pdus, Pdu.release(Pdu.RELEASE_RP));
        return;
      }
      AgreedContext context = contexts.get(message.get().contextId());
      if (context == null) {
        throw new IllegalStateException("a message in a context that was not agreed was let in");
      }
      answer(message.get(), context, writer, pdus, from);
    }
  }

  private void answer(
      Message message, AgreedContext context, MessageWriter writer, PduReader pdus, AeTitle from)
      throws NetFailure {
    int field = message.command().number(CommandSet.COMMAND_FIELD);
    if ((field & CommandSet.ANSWER) != 0) {
      throw NetFailure.broken(
          NetFailure.Abort.NOT_SPECIFIED, CALLER + " answered what nobody asked");
    }
    if (field == CommandSet.CANCEL_RQ) {
      return;
    }
    int status = Statuses.UNRECOGNIZED_OPERATION;
    if (field == CommandSet.ECHO_RQ) {
      status = Statuses.SUCCESS;
    } else if (field == CommandSet.EVENT_REPORT_RQ) {
      status = keep(CommitmentReport.read(message.data(), context.transferSyntax()), from);
    }
    try {
      writer.command(context.id(), CommandSet.answerTo(message.command(), status));
      writer.flush();
    } catch (IOException failure) {
      throw pdus.broken(failure, "the caller to take our answer");
    }
  }

  private int keep(Outcome<CommitmentReport> read, AeTitle from) {
    if (read instanceof Outcome.Refused<CommitmentReport> refused) {
      receiver.turnedAway(refused.sentence());
    }
    return Statuses.ofReport(read, report -> receiver.report(from, report));
  }

  private void write(Connection connection, PduReader pdus, Pdu pdu) throws NetFailure {
    connection.allow(rules.timeouts().silence());
    try {
      connection.write(pdu.toBytes());
    } catch (IOException failure) {
      throw pdus.broken(failure, "the caller to take our answer");
    }
  }
}
