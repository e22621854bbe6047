package org.vestibule.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.toml.TomlMapper;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.vestibule.base.Outcome;

/** A TOML text whose values know the line they stand on, so that errors name line and key. */
final class TomlFile {

  private static final Pattern TABLE = Pattern.compile("\\s*\\[([A-Za-z0-9_.-]+)]\\s*(#.*)?");
  private static final Pattern TABLES = Pattern.compile("\\s*\\[\\[([A-Za-z0-9_.-]+)]]\\s*(#.*)?");
  private static final Pattern KEY = Pattern.compile("\\s*([A-Za-z0-9_.-]+)\\s*=.*");

  /** A value and the line it stands on, counted from one; zero where it is not known. */
  record Entry(String key, JsonNode value, int line) {}

  private final Map<String, Entry> entries;

  private TomlFile(Map<String, Entry> entries) {
    this.entries = entries;
  }

  static Outcome<TomlFile> parse(String text, String fileName) {
    JsonNode root;
    try {
      root = new TomlMapper().readTree(text);
    } catch (JsonProcessingException e) {
      int line = e.getLocation() == null ? 0 : e.getLocation().getLineNr();
      return Outcome.refused(
          fileName + ", line " + line + ": not TOML: " + firstLine(e.getOriginalMessage()),
          "correct that line; text stands in double quotes, one key = value per line");
    }
    Map<String, Integer> lines = lines(text);
    Map<String, Entry> entries = new LinkedHashMap<>();
    collect("", root, lines, entries);
    return Outcome.done(new TomlFile(entries));
  }

  /** All values by their dotted key; entries of repeated tables are numbered from zero. */
  List<Entry> entries() {
    return List.copyOf(entries.values());
  }

  private static void collect(
      String path, JsonNode node, Map<String, Integer> lines, Map<String, Entry> entries) {
    if (node.isObject()) {
      for (Map.Entry<String, JsonNode> field : node.properties()) {
        String key = path.isEmpty() ? field.getKey() : path + "." + field.getKey();
        collect(key, field.getValue(), lines, entries);
      }
    } else if (node.isArray() && !node.isEmpty() && node.get(0).isObject()) {
      for (int i = 0; i < node.size(); i++) {
        collect(path + "[" + i + "]", node.get(i), lines, entries);
      }
    } else {
      entries.put(path, new Entry(path, node, lines.getOrDefault(path, 0)));
    }
  }

  private static Map<String, Integer> lines(String text) {
    Map<String, Integer> lines = new LinkedHashMap<>();
    Map<String, Integer> repeats = new LinkedHashMap<>();
    String table = "";
    List<String> all = new ArrayList<>(text.lines().toList());
    for (int i = 0; i < all.size(); i++) {
      Matcher repeated = TABLES.matcher(all.get(i));
      Matcher single = TABLE.matcher(all.get(i));
      Matcher key = KEY.matcher(all.get(i));
      if (repeated.matches()) {
        int count = repeats.merge(repeated.group(1), 1, Integer::sum) - 1;
        table = repeated.group(1) + "[" + count + "].";
      } else if (single.matches()) {
        table = single.group(1) + ".";
      } else if (key.matches()) {
        lines.putIfAbsent(table + key.group(1), i + 1);
      }
    }
    return lines;
  }

  private static String firstLine(String message) {
    return message.lines().findFirst().orElse("the text cannot be read");
  }
}
