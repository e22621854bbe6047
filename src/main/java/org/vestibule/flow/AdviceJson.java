package org.vestibule.flow;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import java.util.ArrayList;
import java.util.List;
import org.vestibule.quality.QualityFinding;

/** Advice about a photograph that waits, in the words in which it was found. */
final class AdviceJson {

  private static final ObjectMapper JSON = new ObjectMapper();

  private AdviceJson() {}

  static String write(List<QualityFinding> findings) {
    ArrayNode json = JSON.createArrayNode();
    for (QualityFinding finding : findings) {
      Advice advice = Advice.of(finding);
      json.addObject()
          .put("kind", advice.kind())
          .put("measure", advice.measure())
          .put("measured", finding.measured())
          .put("threshold", finding.threshold())
          .put("sentence", advice.sentence())
          .put("whatToDo", advice.whatToDo());
    }
    return json.toString();
  }

  static List<Advice> read(String text) {
    List<Advice> advice = new ArrayList<>();
    try {
      for (JsonNode one : JSON.readTree(text)) {
        advice.add(
            new Advice(
                one.path("kind").asText(),
                one.path("measure").asText(),
                one.path("sentence").asText(),
                one.path("whatToDo").asText()));
      }
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("the ledger's advice is not JSON", e);
    }
    return List.copyOf(advice);
  }
}
