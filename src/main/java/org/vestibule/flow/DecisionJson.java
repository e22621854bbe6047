package org.vestibule.flow;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
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
}
