package org.vestibule.check;

import java.util.List;

/**
 * What was found in one file, for a person to read.
 *
 * @param name the file's name, as the person gave it
 * @param findings errors and warnings in the order of the walk
 * @param photographic false for a rejection note, whose file header alone is looked at
 */
public record CheckReport(String name, List<Finding> findings, boolean photographic) {

  public CheckReport {
    findings = List.copyOf(findings);
  }

  /** Checks a file's bytes. */
  public static CheckReport of(String name, byte[] file) {
    return NoteRules.isNote(file)
        ? new CheckReport(name, NoteRules.check(file), false)
        : new CheckReport(name, PhotographicChecker.check(file), true);
  }

  /** True if nothing breaks the standard; there may be warnings. */
  public boolean passes() {
    return errors() == 0;
  }

  public long errors() {
    return count(Severity.ERROR);
  }

  public long warnings() {
    return count(Severity.WARNING);
  }

  /** One line with the verdict, then one line for each finding. */
  public String words() {
    StringBuilder words = new StringBuilder(name).append(": ").append(verdict()).append('\n');
    for (Finding finding : findings) {
      words.append("  ").append(finding.words()).append('\n');
    }
    return words.toString();
  }

  private String verdict() {
    if (findings.isEmpty() && !photographic) {
      return "a Key Object Selection Document, not a photograph; it names what it selects";
    }
    if (findings.isEmpty()) {
      return "a conformant VL Photographic Image";
    }
    String counted = counted(errors(), "error") + ", " + counted(warnings(), "warning");
    return passes()
        ? "conformant, with remarks (" + counted + ")"
        : "not conformant (" + counted + ")";
  }

  private static String counted(long count, String what) {
    return count == 1 ? "1 " + what : count + " " + what + "s";
  }

  private long count(Severity severity) {
    return findings.stream().filter(f -> f.severity() == severity).count();
  }
}
