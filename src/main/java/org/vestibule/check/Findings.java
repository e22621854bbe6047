package org.vestibule.check;

import java.util.ArrayList;
import java.util.List;
import org.vestibule.dicom.Dictionary;

/** Collects findings below one place in the data set. */
final class Findings {

  private final List<Finding> found;
  private final String prefix;

  Findings() {
    this(new ArrayList<>(), "");
  }

  private Findings(List<Finding> found, String prefix) {
    this.found = found;
    this.prefix = prefix;
  }

  /** The same collection, one item deeper. */
  Findings inside(String sequence, int item) {
    return new Findings(found, prefix + sequence + "[" + item + "]>");
  }

  void error(int tag, String sentence, String section) {
    add(Severity.ERROR, tag, sentence, section);
  }

  void warning(int tag, String sentence, String section) {
    add(Severity.WARNING, tag, sentence, section);
  }

  void add(Severity severity, int tag, String sentence, String section) {
    found.add(new Finding(severity, prefix + Dictionary.keyword(tag), tag, sentence, section));
  }

  /** A finding about the file rather than one element. */
  void file(Severity severity, String sentence, String section) {
    found.add(new Finding(severity, "file", 0, sentence, section));
  }

  List<Finding> list() {
    return List.copyOf(found);
  }
}
