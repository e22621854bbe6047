package org.vestibule.flow;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.vestibule.assign.Decision;
import org.vestibule.assign.DecisionRecord;

/** Decisions as the ledger keeps them. */
final class DecisionJson {

  private static final ObjectMapper JSON = new ObjectMapper();

  private DecisionJson() {}

  static String write(DecisionRecord decision) {
    try {
      return JSON.writeValueAsString(decision);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a decision can't be written as JSON", e);
    }
  }

  static DecisionRecord read(String json) {
    try {
      return JSON.readValue(json, DecisionRecord.class);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("the ledger's decision is not what this version writes", e);
    }
  }

  /** True if objects made by either would say and show the same, whoever decided. */
  static boolean sameButForWho(Decision one, Decision other) {
    return bare(one).equals(bare(other));
  }

  private static ObjectNode bare(Decision decision) {
    ObjectNode json = JSON.valueToTree(DecisionRecord.of(decision.withoutWho()));
    return json.remove(List.of("seen", "mayTrim"));
  }
}
