package org.vestibule.dicom.net;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.vestibule.base.Outcome;

/** Opens an association: A-ASSOCIATE-RQ out, -AC or -RJ in (PS3.8 7.1). */
final class Opening {

  private static final int MOST_OFFERS = 128;

  private final RemoteEntity remote;
  private final List<Offer> offers;
  private final Connection connection;
  private final PduReader pdus;
  private final Predicate<CommitmentReport> reports;

  private Opening(
      RemoteEntity remote,
      List<Offer> offers,
      Connection connection,
      Predicate<CommitmentReport> reports) {
    this.reports = reports;
    this.remote = remote;
    this.offers = offers;
    this.connection = connection;
    this.pdus = new PduReader(connection);
  }

  static Opened open(RemoteEntity remote, List<Offer> offers, Predicate<CommitmentReport> reports)
      throws NetFailure {
    List<Offer> distinct = offers.stream().distinct().toList();
    if (distinct.isEmpty() || distinct.size() > MOST_OFFERS) {
      throw new IllegalArgumentException("1 to 128 offers but " + distinct.size());
    }
    Connection connection = Connecting.to(remote);
    try {
      return new Opening(remote, distinct, connection, reports).open();
    } catch (NetFailure failure) {
      Opened.end(connection, failure.abort());
      throw failure;
    }
  }

  private Opened open() throws NetFailure {
    String waitingFor = "the answer to our request for an association";
    connection.allow(remote.timeouts().association());
    try {
      connection.write(AssociateWriter.request(request()).toBytes());
    } catch (IOException failure) {
      throw pdus.broken(failure, waitingFor);
    }
    Pdu pdu = pdus.next(waitingFor);
    connection.allowAll();
    return switch (pdu.type()) {
      case Pdu.ASSOCIATE_AC -> accepted(AssociateReader.read(pdu, connection.peer()));
      case Pdu.ASSOCIATE_RJ -> throw PeerWords.rejected(pdu, connection.peer());
      case Pdu.ABORT -> throw PeerWords.aborted(pdu, connection.peer());
      default ->
          throw NetFailure.broken(
              NetFailure.Abort.UNEXPECTED_PDU,
              connection.peer()
                  + " sent a PDU of type "
                  + pdu.type()
                  + " instead of "
                  + waitingFor);
    };
  }

  private Associate request() {
    List<Associate.Context> contexts = new ArrayList<>();
    for (int i = 0; i < offers.size(); i++) {
      Offer offer = offers.get(i);
      contexts.add(
          new Associate.Context(2 * i + 1, 0, offer.abstractSyntax(), offer.transferSyntaxes()));
    }
    return new Associate(
        remote.called().value(),
        remote.calling().value(),
        NetUids.APPLICATION_CONTEXT,
        contexts,
        UserInformation.ours(
            List.of(),
            offers.stream()
                .map(Offer::abstractSyntax)
                .filter(NetUids.STUDY_ROOT_FIND::equals)
                .collect(Collectors.toSet())));
  }

  private Opened accepted(Associate answer) throws NetFailure {
    List<AgreedContext> agreed = new ArrayList<>();
    for (int i = 0; i < offers.size(); i++) {
      int id = 2 * i + 1;
      Offer offer = offers.get(i);
      Optional<Associate.Context> context =
          answer.contexts().stream().filter(c -> c.id() == id).findFirst();
      if (context.isPresent() && context.get().result() == Associate.ACCEPTED) {
        agreed.add(agreed(id, offer, context.get().transferSyntaxes()));
      }
    }
    Exchange exchange =
        new Exchange(
            connection, pdus, agreed, answer.user().mostBodyBytes(), remote.timeouts(), reports);
    return new Opened(
        connection,
        pdus,
        exchange,
        remote.timeouts(),
        answer.user().relational().contains(NetUids.STUDY_ROOT_FIND));
  }

  private AgreedContext agreed(int id, Offer offer, List<String> chosen) throws NetFailure {
    if (chosen.size() != 1 || !offer.transferSyntaxes().contains(chosen.get(0))) {
      throw new NetFailure(
          Outcome.Kind.REQUEST,
          NetFailure.Abort.INVALID_PARAMETER,
          connection.peer() + " chose a transfer syntax that we did not offer",
          "ask its maker");
    }
    return new AgreedContext(id, offer.abstractSyntax(), chosen.get(0));
  }
}
