package org.vestibule.flow;

import java.util.Arrays;
import java.util.stream.Collectors;
import org.vestibule.assign.Patient;

/** How much of a patient's name stands on a visit card for people to read. */
public enum NamesOnCards {
  /** None: cards lie about in a practice. */
  NONE,
  /** First letters, given name first. */
  INITIALS,
  /** The whole name, given name first. */
  FULL;

  /** What is printed for a patient, whose name is in DICOM's form (PS3.5 6.2, PN). */
  String of(Patient patient) {
    String[] parts = patient.name().split("=", 2)[0].split("\\^", -1);
    String family = parts[0].strip();
    String given =
        Arrays.stream(parts)
            .skip(1)
            .limit(2)
            .map(String::strip)
            .filter(part -> !part.isEmpty())
            .collect(Collectors.joining(" "));
    return switch (this) {
      case NONE -> "";
      case INITIALS -> (initial(given) + " " + initial(family)).strip();
      case FULL -> (given + " " + family).strip();
    };
  }

  private static String initial(String name) {
    return name.isEmpty() ? "" : Character.toString(name.codePointAt(0)) + ".";
  }
}
