package org.vestibule.audit;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;

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
    try (InputStream in =
            Objects.requireNonNull(
                AuditCode.class.getResourceAsStream(RESOURCE), "missing resource " + RESOURCE);
        BufferedReader reader =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      return reader
          .lines()
          .skip(2)
          .map(line -> line.split(",", -1))
          .collect(Collectors.toMap(c -> c[0], c -> new AuditCode(c[1], c[2], c[3])));
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read resource " + RESOURCE, e);
    }
  }
}
