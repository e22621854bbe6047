package org.vestibule.flow;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Reasons and proposals as the ledger keeps them. */
final class WaitingJson {

  private static final ObjectMapper JSON = new ObjectMapper();

  private WaitingJson() {}

  static String reasons(List<WaitingPhoto.Reason> reasons) {
    ArrayNode json = JSON.createArrayNode();
    for (WaitingPhoto.Reason reason : reasons) {
      json.addObject()
          .put("kind", reason.kind())
          .put("sentence", reason.sentence())
          .put("advice", reason.advice());
    }
    return json.toString();
  }

  static List<WaitingPhoto.Reason> reasons(String text) {
    List<WaitingPhoto.Reason> reasons = new ArrayList<>();
    for (JsonNode reason : tree(text)) {
      reasons.add(
          new WaitingPhoto.Reason(
              reason.path("kind").asText(),
              reason.path("sentence").asText(),
              reason.path("advice").asText()));
    }
    return reasons;
  }

  static String proposal(Map<String, String> proposal) {
    ObjectNode json = JSON.createObjectNode();
    new TreeMap<>(proposal).forEach(json::put);
    return json.toString();
  }

  static Map<String, String> proposal(String text) {
    Map<String, String> proposal = new LinkedHashMap<>();
    for (Map.Entry<String, JsonNode> fact : tree(text).properties()) {
      proposal.put(fact.getKey(), fact.getValue().asText());
    }
    return proposal;
  }

  private static JsonNode tree(String text) {
    try {
      return JSON.readTree(text);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("the ledger's waiting list is not JSON", e);
    }
  }
}
