package org.vestibule.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;

/** Turns the tree of PS3.18 annex F.2 into a data set. */
final class JsonModelReader {

  private static final Pattern TAG = Pattern.compile("[0-9A-Fa-f]{8}");

  private final Function<String, Optional<byte[]>> bulkData;

  JsonModelReader(Function<String, Optional<byte[]>> bulkData) {
    this.bulkData = bulkData;
  }

  DataSet dataSet(JsonNode object, int depth) {
    if (!object.isObject()) {
      throw refusal("a data set must be a JSON object");
    }
    if (depth > DataSetReader.DEEPEST) {
      throw refusal("sequences are nested more than " + DataSetReader.DEEPEST + " deep");
    }
    DataSet data = new DataSet();
    for (Map.Entry<String, JsonNode> field : object.properties()) {
      if (!TAG.matcher(field.getKey()).matches()) {
        throw refusal("a name is not a tag of eight hexadecimal digits");
      }
      int tag = Integer.parseUnsignedInt(field.getKey(), 16);
      try {
        data.put(element(tag, field.getValue(), depth));
      } catch (IllegalArgumentException e) {
        throw refusal(Tags.text(tag) + " has a value that its representation can't hold");
      }
    }
    return data;
  }

  private Element element(int tag, JsonNode attribute, int depth) {
    Vr vr =
        Vr.of(attribute.path("vr").asText())
            .orElseThrow(() -> refusal(Tags.text(tag) + " has no known vr"));
    if (attribute.has("BulkDataURI")) {
      return binary(tag, vr, fetched(tag, attribute.get("BulkDataURI").asText()));
    }
    if (attribute.has("InlineBinary")) {
      return binary(tag, vr, Base64.getDecoder().decode(attribute.get("InlineBinary").asText()));
    }
    JsonNode values = attribute.path("Value");
    if (!values.isMissingNode() && !values.isArray()) {
      throw refusal(Tags.text(tag) + " has a Value that is not an array");
    }
    if (vr == Vr.SQ) {
      return sequence(tag, values, depth);
    }
    if (vr.isBytes()) {
      return binary(tag, vr, new byte[0]);
    }
    List<String> texts = new ArrayList<>();
    values.forEach(value -> texts.add(text(tag, vr, value)));
    return Element.ofStrings(tag, vr, texts);
  }

  private Element sequence(int tag, JsonNode values, int depth) {
    List<Value.Item> items = new ArrayList<>();
    values.forEach(item -> items.add(new Value.Item(dataSet(item, depth + 1), false)));
    return new Element(tag, Vr.SQ, new Value.Items(items, false));
  }

  private static Element binary(int tag, Vr vr, byte[] bytes) {
    if (vr == Vr.SQ || bytes.length % vr.unitBytes() != 0) {
      throw refusal(Tags.text(tag) + " has bytes that its representation " + vr + " can't hold");
    }
    Bytes content = Bytes.copyOf(bytes);
    return new Element(
        tag,
        vr,
        vr.isText() ? new Value.EncodedText(content, Repertoire.UTF_8) : new Value.Binary(content));
  }

  private byte[] fetched(int tag, String uri) {
    return bulkData
        .apply(uri)
        .orElseThrow(() -> refusal(Tags.text(tag) + " stands at a BulkDataURI that can't be had"));
  }

  private static String text(int tag, Vr vr, JsonNode value) {
    if (value.isNull()) {
      return "";
    }
    if (vr == Vr.PN) {
      return name(value);
    }
    if (value.isContainerNode()) {
      throw refusal(Tags.text(tag) + " has a value that is not text or a number");
    }
    return switch (vr) {
      case FL, FD -> value.isNumber() ? value.asText() : finite(value.asText());
      case IS, US, SS, UL, SL, SV, UV ->
          value.isNumber() ? whole(value.decimalValue()) : value.asText();
      default -> value.asText();
    };
  }

  private static String whole(BigDecimal number) {
    if (number.precision() - number.scale() > 20 || number.stripTrailingZeros().scale() > 0) {
      throw new IllegalArgumentException("not a whole number of 64 bits");
    }
    return number.toBigIntegerExact().toString();
  }

  private static String finite(String text) {
    return switch (text) {
      case "inf", "Infinity" -> "Infinity";
      case "-inf", "-Infinity" -> "-Infinity";
      default -> text;
    };
  }

  private static String name(JsonNode value) {
    List<String> groups = new ArrayList<>();
    for (String group : JsonModelWriter.NAME_GROUPS) {
      groups.add(value.path(group).asText(""));
    }
    while (!groups.isEmpty() && groups.get(groups.size() - 1).isEmpty()) {
      groups.remove(groups.size() - 1);
    }
    return String.join("=", groups);
  }

  private static Refusal refusal(String reason) {
    return new Refusal(
        "not a data set in the DICOM JSON model: " + reason,
        "write it as PS3.18 annex F describes");
  }
}
