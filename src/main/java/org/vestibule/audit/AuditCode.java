package org.vestibule.audit;

import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.vestibule.base.ResourceTable;

/**
 * A code of an audit message (CodedValueType of PS3.15 A.5.1).
 *
 * @param value csd-code
 * @param system codeSystemName
 * @param text originalText
 */
record AuditCode(String value, String system, String text) {

  private static final String RESOURCE = "audit-codes.csv";

  private static final class Table {
    static final Map<String, AuditCode> CODES = read();
  }

  /** True for the roles of a medium, whose kind is said besides. */
  boolean isMedia() {
    return equals(of("destination-media")) || equals(of("source-media"));
  }

  /** The code of this key of the table. */
  static AuditCode of(String key) {
    return Objects.requireNonNull(Table.CODES.get(key), () -> RESOURCE + " lacks " + key);
  }

  private static Map<String, AuditCode> read() {
    return ResourceTable.lines(AuditCode.class, RESOURCE).stream()
        .map(line -> line.split(",", -1))
        .collect(Collectors.toMap(c -> c[0], c -> new AuditCode(c[1], c[2], c[3])));
  }
}
