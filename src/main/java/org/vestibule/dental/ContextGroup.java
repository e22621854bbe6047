package org.vestibule.dental;

import java.util.List;
import java.util.Optional;

/**
 * A context group of PS3.16 that this room's vocabulary draws from.
 *
 * @param cid its number, such as 4018
 * @param version its version, YYYYMMDD
 */
public record ContextGroup(int cid, String version, List<Code> codes) {

  private static final CsvTable TABLE = CsvTable.ofResource("codes.csv");

  public ContextGroup {
    codes = List.copyOf(codes);
  }

  /** The group with this number, if the vocabulary carries it. */
  public static Optional<ContextGroup> of(int cid) {
    List<CsvTable.Row> rows =
        TABLE.rows().stream().filter(row -> row.get("cid").equals(Integer.toString(cid))).toList();
    return rows.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new ContextGroup(
                cid,
                rows.get(0).get("version"),
                rows.stream()
                    .map(row -> new Code(row.get("scheme"), row.get("code"), row.get("meaning")))
                    .toList()));
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
