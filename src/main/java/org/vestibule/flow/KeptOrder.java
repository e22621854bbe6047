package org.vestibule.flow;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import org.vestibule.assign.Order;
import org.vestibule.forward.worklist.WorklistEntry;

/**
 * An order as the ledger keeps it: all scheduled steps of one study.
 *
 * @param issuer as the record has it, where it knows the number
 * @param start of the earliest step, ISO 8601, on the practice's clock
 */
record KeptOrder(
    String studyUid,
    String accessionNumber,
    String patientId,
    String issuer,
    String referrer,
    String dentist,
    String start,
    Order order) {

  private static final ObjectMapper JSON = new ObjectMapper();

  /** What a worklist says of one study now, of a patient whose number this issuer gave. */
  static KeptOrder of(List<WorklistEntry> steps, String issuer) {
    WorklistEntry first = steps.get(0);
    List<Order.Step> scheduled = new ArrayList<>();
    String start = first.start().toString();
    for (WorklistEntry step : steps) {
      scheduled.add(new Order.Step(step.stepId(), step.stepDescription(), step.stepCodes()));
      start = start.compareTo(step.start().toString()) < 0 ? start : step.start().toString();
    }
    return new KeptOrder(
        first.studyUid(),
        first.accessionNumber(),
        first.patientId(),
        issuer,
        first.referrer(),
        first.dentist(),
        start,
        new Order(first.requestedProcedureId(), first.description(), first.codes(), scheduled));
  }

  /** How it is called in a message: its accession number, or whatever else it has. */
  String words() {
    for (String id : List.of(accessionNumber, order.requestedProcedureId(), stepId())) {
      if (!id.isEmpty()) {
        return id;
      }
    }
    return "without a number";
  }

  String stepId() {
    return order.steps().get(0).id();
  }

  /** In which points another account of the same order differs. */
  List<String> differences(KeptOrder other) {
    List<String> differences = new ArrayList<>();
    note(differences, "accession number", accessionNumber.equals(other.accessionNumber));
    note(differences, "referrer", referrer.equals(other.referrer));
    note(differences, "dentist", dentist.equals(other.dentist));
    note(differences, "time", start.equals(other.start));
    note(differences, "what was ordered", order.equals(other.order));
    return differences;
  }

  private static void note(List<String> differences, String what, boolean same) {
    if (!same) {
      differences.add(what);
    }
  }

  String json() {
    try {
      return JSON.writeValueAsString(this);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("an order can't be written as JSON", e);
    }
  }

  static KeptOrder read(String json) {
    try {
      return JSON.readValue(json, KeptOrder.class);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("the ledger's order is not what this version writes", e);
    }
  }
}
