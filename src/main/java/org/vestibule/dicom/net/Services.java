package org.vestibule.dicom.net;

import java.io.IOException;
import java.nio.channels.ReadableByteChannel;
import java.util.List;
import java.util.Optional;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.DataSetWriter;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.TransferSyntax;

/** Requests with one answer: echo, store, and storage commitment (PS3.7 9 and 10). */
final class Services {

  private static final int MEDIUM_PRIORITY = 0;
  private static final int REQUEST_COMMITMENT = 1;

  private Services() {}

  static Answer echo(Exchange exchange) throws NetFailure {
    Optional<AgreedContext> context = exchange.context(NetUids.VERIFICATION, Optional.empty());
    if (context.isEmpty()) {
      return notTaken(Statuses.OTHER);
    }
    CommandSet request =
        CommandSet.of(CommandSet.ECHO_RQ, false)
            .put(CommandSet.AFFECTED_SOP_CLASS, NetUids.VERIFICATION)
            .put(CommandSet.MESSAGE_ID, exchange.nextMessageId());
    exchange.send(context.get(), request);
    Message answer = exchange.answer(context.get(), CommandSet.ECHO_RQ, "the answer to our echo");
    return Statuses.read(Statuses.OTHER, answer.command());
  }

  static Answer store(Exchange exchange, Sendable object) throws NetFailure {
    Optional<AgreedContext> context =
        exchange.context(object.sopClass(), Optional.of(object.transferSyntax()));
    if (context.isEmpty()) {
      return notTaken(Statuses.STORE);
    }
    CommandSet request =
        CommandSet.of(CommandSet.STORE_RQ, true)
            .put(CommandSet.AFFECTED_SOP_CLASS, object.sopClass())
            .put(CommandSet.MESSAGE_ID, exchange.nextMessageId())
            .put(CommandSet.PRIORITY, MEDIUM_PRIORITY)
            .put(CommandSet.AFFECTED_SOP_INSTANCE, object.sopInstance());
    int id = context.get().id();
    try (ReadableByteChannel data = object.open()) {
      exchange.send(context.get(), request, writer -> writer.data(id, data, object.dataBytes()));
    } catch (IOException missing) {
      throw NetFailure.here(
          "the file of object " + object.sopInstance() + " can't be read",
          "check the disk, and run verify");
    }
    Message answer =
        exchange.answer(context.get(), CommandSet.STORE_RQ, "the answer to our object");
    return Statuses.read(Statuses.STORE, answer.command());
  }

  static Answer commit(Exchange exchange, String transactionUid, List<InstanceReference> instances)
      throws NetFailure {
    Optional<AgreedContext> context =
        exchange.context(NetUids.STORAGE_COMMITMENT_PUSH, Optional.empty());
    if (context.isEmpty()) {
      return notTaken(Statuses.OTHER);
    }
    CommandSet request =
        CommandSet.of(CommandSet.ACTION_RQ, true)
            .put(CommandSet.REQUESTED_SOP_CLASS, NetUids.STORAGE_COMMITMENT_PUSH)
            .put(CommandSet.MESSAGE_ID, exchange.nextMessageId())
            .put(CommandSet.REQUESTED_SOP_INSTANCE, NetUids.STORAGE_COMMITMENT_INSTANCE)
            .put(CommandSet.ACTION_TYPE, REQUEST_COMMITMENT);
    DataSet information =
        new DataSet()
            .put(NetTags.TRANSACTION_UID, transactionUid)
            .put(
                Tags.ReferencedSOPSequence,
                instances.stream()
                    .map(
                        i ->
                            new DataSet()
                                .put(Tags.ReferencedSOPClassUID, i.sopClass())
                                .put(Tags.ReferencedSOPInstanceUID, i.sopInstance()))
                    .toList());
    byte[] bytes = bytes(information, context.get());
    int id = context.get().id();
    exchange.send(context.get(), request, writer -> writer.data(id, bytes));
    Message answer =
        exchange.answer(
            context.get(), CommandSet.ACTION_RQ, "the answer to our storage commitment request");
    return Statuses.read(Statuses.OTHER, answer.command());
  }

  /** A data set of our own, written as was agreed. */
  static byte[] bytes(DataSet data, AgreedContext context) {
    return DataSetWriter.write(data, new TransferSyntax(context.transferSyntax())).orThrow();
  }

  /** What is not agreed can't be asked; PS3.7 C.4.1.2 has a status for it. */
  static Answer notTaken(String service) {
    Answer answer = Statuses.of(service, Statuses.SOP_CLASS_NOT_SUPPORTED);
    return new Answer(
        answer.kind(),
        answer.status(),
        "it did not agree to this service or this kind of object and its transfer syntax",
        false,
        "",
        List.of());
  }
}
