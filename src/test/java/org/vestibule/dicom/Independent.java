package org.vestibule.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import org.vestibule.ExternalTool;

/** Files that pydicom wrote, and what pydicom reads in any file, as DICOM JSON. */
final class Independent {

  private static final ObjectMapper JSON = new ObjectMapper();

  private final ExternalTool python = ExternalTool.require("python3", "python3-pydicom");
  private final Path script;

  Independent(Path folder) throws IOException {
    script = folder.resolve("independent.py");
    try (InputStream in = Independent.class.getResourceAsStream("independent.py")) {
      Files.copy(in, script, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  void write(Path folder) throws Exception {
    run("write", folder.toString());
  }

  List<JsonNode> read(List<Path> files) throws Exception {
    List<String> arguments = new ArrayList<>(List.of("json"));
    files.forEach(file -> arguments.add(file.toString()));
    List<JsonNode> read = new ArrayList<>();
    for (String line : run(arguments.toArray(String[]::new)).text().split("\n", -1)) {
      if (!line.isEmpty()) {
        read.add(JSON.readTree(line));
      }
    }
    return read;
  }

  private ExternalTool.Result run(String... arguments) throws Exception {
    String[] all = new String[arguments.length + 1];
    all[0] = script.toString();
    System.arraycopy(arguments, 0, all, 1, arguments.length);
    ExternalTool.Result result = python.run(all);
    assertThat(result.exitCode()).as(result.errors()).isZero();
    return result;
  }

  /** What we read, in the same model, file meta information included. */
  static ObjectNode ours(DicomFile file) throws IOException {
    ObjectNode meta = object(file.meta());
    meta.setAll(object(file.data()));
    return meta;
  }

  private static ObjectNode object(DataSet data) throws IOException {
    return (ObjectNode) JSON.readTree(DicomJson.write(data).orThrow());
  }

  /** The first difference between the two, or an empty text. Numbers are compared as numbers. */
  static String difference(JsonNode ours, JsonNode theirs, String path) {
    if (ours.isNumber() && theirs.isNumber()) {
      boolean same =
          ours.decimalValue().compareTo(theirs.decimalValue()) == 0
              || ours.doubleValue() == theirs.doubleValue();
      return same ? "" : path + ": " + ours + " not " + theirs;
    }
    if (ours.isObject() && theirs.isObject()) {
      return objects(ours, theirs, path);
    }
    if (ours.isArray() && theirs.isArray()) {
      return arrays(ours, theirs, path);
    }
    boolean nothing = isNothing(ours) && isNothing(theirs);
    return nothing || ours.equals(theirs) ? "" : path + ": " + ours + " not " + theirs;
  }

  /** An empty value is null by PS3.18 F.2.5; pydicom writes an empty text. */
  private static boolean isNothing(JsonNode node) {
    return (node.isTextual() && node.asText().isEmpty())
        || node.isMissingNode()
        || node.isNull()
        || (node.isEmpty() && !node.isValueNode());
  }

  private static String objects(JsonNode ours, JsonNode theirs, String path) {
    for (Map.Entry<String, JsonNode> field : theirs.properties()) {
      String difference =
          difference(ours.path(field.getKey()), field.getValue(), path + "/" + field.getKey());
      if (!difference.isEmpty()) {
        return difference;
      }
    }
    Iterator<String> names = ours.fieldNames();
    while (names.hasNext()) {
      String name = names.next();
      if (!theirs.has(name)) {
        return path + "/" + name + ": only ours";
      }
    }
    return "";
  }

  private static String arrays(JsonNode ours, JsonNode theirs, String path) {
    if (ours.size() != theirs.size()) {
      return path + ": " + ours.size() + " not " + theirs.size();
    }
    for (int i = 0; i < ours.size(); i++) {
      String difference = difference(ours.get(i), theirs.get(i), path + "/" + i);
      if (!difference.isEmpty()) {
        return difference;
      }
    }
    return "";
  }
}
