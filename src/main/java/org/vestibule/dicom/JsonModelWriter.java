package org.vestibule.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Turns a data set into the tree of PS3.18 annex F.2. */
final class JsonModelWriter {

  static final List<String> NAME_GROUPS = List.of("Alphabetic", "Ideographic", "Phonetic");

  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private final Function<Element, Optional<String>> bulkDataUri;

  JsonModelWriter(Function<Element, Optional<String>> bulkDataUri) {
    this.bulkDataUri = bulkDataUri;
  }

  ObjectNode object(DataSet data) {
    ObjectNode object = NODES.objectNode();
    for (Element element : data) {
      object.set(Tags.digits(element.tag()), attribute(element));
    }
    return object;
  }

  private ObjectNode attribute(Element element) {
    ObjectNode attribute = NODES.objectNode();
    attribute.put("vr", element.vr().name());
    if (element.isEmpty()) {
      return attribute;
    }
    Optional<String> uri =
        element.vr().isBytes() || element.vr().isText()
            ? bulkDataUri.apply(element)
            : Optional.empty();
    if (uri.isPresent()) {
      attribute.put("BulkDataURI", uri.get());
    } else if (element.isEncapsulated()) {
      throw new Refusal(
          element + " is encapsulated, which JSON can't hold inline",
          "give a BulkDataURI where its frames can be had");
    } else if (element.vr().isBytes()) {
      attribute.put("InlineBinary", Base64.getEncoder().encodeToString(element.toByteArray()));
    } else {
      attribute.set("Value", values(element));
    }
    return attribute;
  }

  private ArrayNode values(Element element) {
    ArrayNode values = NODES.arrayNode();
    if (element.vr() == Vr.SQ) {
      element.items().forEach(item -> values.add(object(item)));
      return values;
    }
    for (String value : element.strings()) {
      values.add(value.isEmpty() ? NODES.nullNode() : value(element.vr(), value));
    }
    return values;
  }

  private static JsonNode value(Vr vr, String value) {
    return switch (vr) {
      case PN -> name(value);
      case DS, IS, US, SS, UL, SL, SV, UV, FL, FD ->
          Numbers.parse(value).map(JsonModelWriter::number).orElseGet(() -> notFinite(value));
      default -> NODES.textNode(value);
    };
  }

  private static JsonNode number(BigDecimal number) {
    return NODES.numberNode(number);
  }

  /** F.2.3 writes what isn't a finite number as these words (from memory). */
  private static JsonNode notFinite(String value) {
    return NODES.textNode(
        switch (value) {
          case "Infinity" -> "inf";
          case "-Infinity" -> "-inf";
          default -> value;
        });
  }

  private static JsonNode name(String value) {
    ObjectNode name = NODES.objectNode();
    String[] groups = value.split("=", -1);
    for (int i = 0; i < Math.min(groups.length, NAME_GROUPS.size()); i++) {
      if (!groups[i].isEmpty()) {
        name.put(NAME_GROUPS.get(i), groups[i]);
      }
    }
    return name;
  }
}
