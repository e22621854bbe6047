package org.vestibule.dicom.net;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.DataSetReader;
import org.vestibule.dicom.TransferSyntax;

/** One query and its answers (C-FIND, PS3.7 9.1.2), stopped where there are too many. */
final class Finding {

  /** An archive that was asked to stop may still have answers on their way. */
  private static final int MOST_AFTER_CANCEL = 10_000;

  /** Thousands of answers of some hundred bytes; what a query brings is held in memory. */
  private static final int MOST_BYTES = 32 << 20;

  private static final String WAITING_FOR = "the answer to our query";

  private final Exchange exchange;
  private final String sopClass;
  private final int most;
  private final List<DataSet> answers = new ArrayList<>();

  Finding(Exchange exchange, String sopClass, int most) {
    this.exchange = exchange;
    this.sopClass = sopClass;
    this.most = most;
  }

  Found ask(DataSet question) throws NetFailure {
    Optional<AgreedContext> agreed = exchange.context(sopClass, Optional.empty());
    if (agreed.isEmpty()) {
      return new Found(List.of(), false, Services.notTaken(Statuses.FIND));
    }
    AgreedContext context = agreed.get();
    int messageId = exchange.nextMessageId();
    CommandSet request =
        CommandSet.of(CommandSet.FIND_RQ, true)
            .put(CommandSet.AFFECTED_SOP_CLASS, sopClass)
            .put(CommandSet.MESSAGE_ID, messageId)
            .put(CommandSet.PRIORITY, 0);
    byte[] bytes = Services.bytes(question, context);
    exchange.send(context, request, writer -> writer.data(context.id(), bytes));
    return answers(context, messageId);
  }

  private Found answers(AgreedContext context, int messageId) throws NetFailure {
    int dropped = 0;
    long bytes = 0;
    Deadline end = exchange.forAllAnswers();
    while (true) {
      Message message = exchange.answer(context, CommandSet.FIND_RQ, WAITING_FOR, end);
      Answer answer = Statuses.read(Statuses.FIND, message.command());
      if (answer.kind() != Answer.Kind.PENDING) {
        return new Found(answers, dropped > 0, answer);
      }
      bytes += message.data().length;
      if (bytes > MOST_BYTES) {
        throw NetFailure.broken(
            NetFailure.Abort.NOT_SPECIFIED,
            "the answers to our query have more than " + MOST_BYTES + " bytes");
      }
      if (end.isOver()) {
        throw exchange.late(WAITING_FOR);
      }
      if (answers.size() < most) {
        answers.add(read(message, context));
        continue;
      }
      if (++dropped == 1) {
        exchange.send(
            context,
            CommandSet.of(CommandSet.CANCEL_RQ, false)
                .put(CommandSet.ANSWERED_MESSAGE_ID, messageId));
      } else if (dropped > MOST_AFTER_CANCEL) {
        throw NetFailure.broken(
            NetFailure.Abort.NOT_SPECIFIED, "the archive went on answering after it was stopped");
      }
    }
  }

  private DataSet read(Message message, AgreedContext context) throws NetFailure {
    Outcome<DataSet> read =
        DataSetReader.read(message.data(), new TransferSyntax(context.transferSyntax()));
    if (read instanceof Outcome.Done<DataSet> done) {
      return done.value();
    }
    throw NetFailure.broken(
        NetFailure.Abort.NOT_SPECIFIED, "an answer to our query holds no readable data set");
  }
}
