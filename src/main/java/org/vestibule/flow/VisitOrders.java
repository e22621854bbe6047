package org.vestibule.flow;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.vestibule.assign.VisitList;
import org.vestibule.audit.AuditOutcome;
import org.vestibule.audit.AuditPeer;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dicom.DataSetWriter;
import org.vestibule.dicom.TransferSyntax;
import org.vestibule.forward.worklist.Worklist;
import org.vestibule.forward.worklist.WorklistAnswer;
import org.vestibule.forward.worklist.WorklistEntry;
import org.vestibule.forward.worklist.WorklistRules;

/** Fetches the orders of a day into the practice's visits. */
public final class VisitOrders {

  private final Practice practice;
  private final WorklistRules rules;

  public VisitOrders(Practice practice) {
    this.practice = practice;
    this.rules = practice.settings().worklist();
  }

  /**
   * Asks the worklist and takes over what is new. What contradicts the record is told and left
   * alone; a visit under which photographs were filed keeps what it had then.
   *
   * @param by who asks; empty for whoever is logged in
   */
  public Outcome<FetchedOrders> fetch(LocalDate day, String by) throws IOException {
    if (!rules.isThere()) {
      return Outcome.refused(
          "the settings name no worklist",
          "add [worklist] with host, port and title; or keep the visits in a list, as before");
    }
    Outcome<VisitList> visits = new VisitBook(practice).all();
    if (!(visits instanceof Done<VisitList> known)) {
      return ((Refused<VisitList>) visits).as();
    }
    Outcome<WorklistAnswer> answer = Worklist.ask(rules, day, practice.clock());
    tell(day, by, answer);
    return answer.map(found -> take(day, found, known.value()));
  }

  private FetchedOrders take(LocalDate day, WorklistAnswer answer, VisitList visits) {
    Map<String, List<WorklistEntry>> byStudy = new LinkedHashMap<>();
    for (WorklistEntry entry : answer.entries()) {
      byStudy.computeIfAbsent(entry.studyUid(), any -> new ArrayList<>()).add(entry);
    }
    OrderTaking taking = new OrderTaking(practice, visits, "worklist " + rules.called());
    practice
        .store()
        .ledger()
        .together(
            () -> {
              byStudy.values().forEach(taking::take);
              return byStudy;
            });
    if (!answer.more()) {
      taking.vanished(day, byStudy.keySet());
    }
    answer.oddities().forEach(taking::concern);
    if (answer.more()) {
      taking.concern(
          "the worklist has more orders than can be taken for one day: name a station in the"
              + " settings, and have the worklist's administrator look why it ignores the day");
    }
    if (answer.others() > 0) {
      taking.note(
          answer.others()
              + " answers were for another day, station or modality, and were passed over");
    }
    return taking.report(day);
  }

  private void tell(LocalDate day, String by, Outcome<WorklistAnswer> answer) throws IOException {
    Auditing audit = practice.audit();
    if (!audit.trail().isOn()) {
      return;
    }
    boolean done = answer instanceof Done<WorklistAnswer>;
    TransferSyntax syntax = TransferSyntax.EXPLICIT_LITTLE_ENDIAN;
    byte[] identifier = DataSetWriter.write(Worklist.question(rules, day), syntax).orThrow();
    audit
        .trail()
        .record(
            audit
                .trail()
                .events()
                .queried(
                    Auditing.person(by),
                    AuditPeer.application(rules.called(), rules.host()),
                    Worklist.SOP_CLASS,
                    identifier,
                    syntax.uid(),
                    done ? AuditOutcome.SUCCESS : AuditOutcome.SERIOUS_FAILURE,
                    done ? "" : ((Refused<WorklistAnswer>) answer).reason()));
  }
}
