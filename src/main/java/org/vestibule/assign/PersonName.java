package org.vestibule.assign;

import java.util.List;
import org.vestibule.base.Outcome;

/**
 * A person's name as lists write it, in DICOM's form Family^Given (PS3.5 6.2, PN: at most 64
 * characters, five components).
 *
 * @param dicom the name
 * @param undivided true if family and given name could not be told apart
 */
record PersonName(String dicom, boolean undivided) {

  static final int MOST_CHARACTERS = 64;

  /** Reads {@code Family, Given} or {@code Family^Given}; anything else stays one family name. */
  static Outcome<PersonName> read(String text) {
    if (text.chars().anyMatch(c -> Character.isISOControl(c) || c == '\\' || c == '=')) {
      return Outcome.refused(
          "a name can't hold line breaks, backslashes or equals signs", "write Family, Given");
    }
    if (text.codePointCount(0, text.length()) > MOST_CHARACTERS) {
      return Outcome.refused(
          "a name can have at most " + MOST_CHARACTERS + " characters", "shorten it");
    }
    String separator = text.contains("^") ? "\\^" : ",";
    List<String> parts = List.of(text.split(separator, -1)).stream().map(String::strip).toList();
    boolean tooMany = parts.size() > (text.contains("^") ? 5 : 2);
    if (tooMany || (parts.size() > 1 && parts.get(0).isEmpty())) {
      return Outcome.refused(
          "the parts of this name can't be told apart", "write Family, Given or Family^Given");
    }
    String dicom = String.join("^", parts).replaceAll("\\^+$", "").replaceAll("\\s+", " ");
    return Outcome.done(new PersonName(dicom, parts.size() == 1 && dicom.contains(" ")));
  }
}
