package org.vestibule.dicom.net;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.vestibule.base.Outcome;

/** Decides on a request for an association: rejected, or which contexts and parts are agreed. */
final class CallJudge {

  private static final int PERMANENT = 1;
  private static final int BY_USER = 1;
  private static final int CONTEXT_NAME = 2;
  private static final int CALLING_TITLE = 3;
  private static final int CALLED_TITLE = 7;
  private static final List<String> SERVICES =
      List.of(NetUids.VERIFICATION, NetUids.STORAGE_COMMITMENT_PUSH);
  private static final List<String> SYNTAXES =
      List.of(NetUids.EXPLICIT_LITTLE_ENDIAN, NetUids.IMPLICIT_LITTLE_ENDIAN);

  private final ListenerRules rules;
  private final Associate request;

  CallJudge(ListenerRules rules, Associate request) {
    this.rules = rules;
    this.request = request;
  }

  /** The rejection (PS3.8 9.3.4), if it is one. */
  Optional<Pdu> rejection() {
    if (!request.applicationContext().equals(NetUids.APPLICATION_CONTEXT)) {
      return Optional.of(Pdu.rejection(PERMANENT, BY_USER, CONTEXT_NAME));
    }
    if (!request.called().equals(rules.own().value())) {
      return Optional.of(Pdu.rejection(PERMANENT, BY_USER, CALLED_TITLE));
    }
    return rules.callers().stream().anyMatch(c -> c.value().equals(request.calling()))
        ? Optional.empty()
        : Optional.of(Pdu.rejection(PERMANENT, BY_USER, CALLING_TITLE));
  }

  /** Why it was rejected; titles are shown only as far as they are proper ones. */
  String words() {
    return "a caller was turned away: it calls itself "
        + shown(request.calling())
        + " and us "
        + shown(request.called())
        + "; we are "
        + rules.own()
        + " and expect "
        + rules.callers().stream().map(AeTitle::value).sorted().toList();
  }

  private static String shown(String title) {
    return AeTitle.read(title) instanceof Outcome.Done<AeTitle> proper
        ? proper.value().value()
        : "by no proper title";
  }

  List<AgreedContext> agreed() {
    List<AgreedContext> agreed = new ArrayList<>();
    for (Associate.Context context : answers()) {
      if (context.result() == Associate.ACCEPTED) {
        agreed.add(
            new AgreedContext(
                context.id(), abstractSyntax(context.id()), context.transferSyntaxes().get(0)));
      }
    }
    return agreed;
  }

  private String abstractSyntax(int id) {
    return request.contexts().stream()
        .filter(c -> c.id() == id)
        .map(Associate.Context::abstractSyntax)
        .findFirst()
        .orElseThrow();
  }

  /** A-ASSOCIATE-AC: titles are sent back as they came (PS3.8 9.3.3). */
  Associate answer() {
    List<RoleSelection> roles =
        request.user().roles().stream()
            .filter(r -> r.sopClass().equals(NetUids.STORAGE_COMMITMENT_PUSH))
            .toList();
    return new Associate(
        request.called(),
        request.calling(),
        NetUids.APPLICATION_CONTEXT,
        answers(),
        UserInformation.ours(roles));
  }

  private List<Associate.Context> answers() {
    List<Associate.Context> answers = new ArrayList<>();
    List<Integer> seen = new ArrayList<>();
    for (Associate.Context context : request.contexts()) {
      if (!seen.contains(context.id())) {
        seen.add(context.id());
        answers.add(answer(context));
      }
    }
    return answers;
  }

  private static Associate.Context answer(Associate.Context context) {
    Optional<String> syntax =
        SYNTAXES.stream().filter(context.transferSyntaxes()::contains).findFirst();
    int result = Associate.ACCEPTED;
    if (!SERVICES.contains(context.abstractSyntax())) {
      result = Associate.NO_ABSTRACT_SYNTAX;
    } else if (syntax.isEmpty()) {
      result = Associate.NO_TRANSFER_SYNTAX;
    }
    return new Associate.Context(
        context.id(), result, "", List.of(syntax.orElse(NetUids.IMPLICIT_LITTLE_ENDIAN)));
  }
}
