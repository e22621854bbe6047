package org.vestibule.dental;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A context group of PS3.16 that this room's vocabulary draws from.
 *
 * @param cid its number, such as 4018
 * @param version its version, YYYYMMDD
 */
public record ContextGroup(int cid, String version, List<Code> codes) {

  private static final Map<Integer, ContextGroup> GROUPS = groups();

  public ContextGroup {
    codes = List.copyOf(codes);
  }

  /** The group with this number, if the vocabulary carries it. */
  public static Optional<ContextGroup> of(int cid) {
    return Optional.ofNullable(GROUPS.get(cid));
  }

  private static Map<Integer, ContextGroup> groups() {
    Map<Integer, List<CsvTable.Row>> rows = new LinkedHashMap<>();
    for (CsvTable.Row row : CsvTable.ofResource("codes.csv").rows()) {
      rows.computeIfAbsent(Integer.valueOf(row.get("cid")), cid -> new ArrayList<>()).add(row);
    }
    Map<Integer, ContextGroup> groups = new HashMap<>();
    rows.forEach((cid, group) -> groups.put(cid, group(cid, group)));
    return Map.copyOf(groups);
  }

  private static ContextGroup group(int cid, List<CsvTable.Row> rows) {
    return new ContextGroup(
        cid,
        rows.get(0).get("version"),
        rows.stream()
            .map(row -> new Code(row.get("scheme"), row.get("code"), row.get("meaning")))
            .toList());
  }

  /** The group's own row for a SNOMED CT code value. */
  public Optional<Code> sct(String value) {
    return codes.stream()
        .filter(code -> code.scheme().equals("SCT") && code.value().equals(value))
        .findFirst();
  }

  /** True if the group lists the concept. */
  public boolean contains(Code code) {
    return codes.stream().anyMatch(code::sameConcept);
  }
}
