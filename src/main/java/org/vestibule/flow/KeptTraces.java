package org.vestibule.flow;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.vestibule.base.ContentHash;
import org.vestibule.intake.Traces;
import org.vestibule.store.ledger.Ledger;

/**
 * Keeps in the ledger what in a photograph's file leads to one camera, file or place, so that
 * copies can be searched for it when the file is gone.
 */
final class KeptTraces {

  private static final String KIND = "traces";
  private static final ObjectMapper JSON = new ObjectMapper();

  private final Ledger ledger;

  KeptTraces(Ledger ledger) {
    this.ledger = ledger;
  }

  void keep(ContentHash photo, Traces traces) {
    if (traces.equals(Traces.NONE)) {
      return;
    }
    ObjectNode json = JSON.createObjectNode();
    ArrayNode texts = json.putArray("texts");
    traces.texts().stream().sorted().forEach(texts::add);
    ArrayNode bytes = json.putArray("bytes");
    traces.bytes().stream().sorted().forEach(bytes::add);
    ledger.arrivals().facts(photo, KIND, json.toString());
  }

  /** None if the file held none, or was filed before they were kept. */
  Traces of(ContentHash photo) {
    return ledger.arrivals().facts(photo, KIND).map(KeptTraces::read).orElse(Traces.NONE);
  }

  private static Traces read(String json) {
    try {
      return JSON.readValue(json, Traces.class);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("the ledger's traces are not what this version writes", e);
    }
  }
}
