package org.vestibule.check;

import java.util.OptionalInt;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Dictionary;
import org.vestibule.dicom.Element;

/**
 * Where a condition is asked.
 *
 * @param here the data set or item that holds, or lacks, the element in question
 * @param root the object's whole data set
 */
record Place(DataSet here, DataSet root) {

  /** The tag of a keyword; the conditions' own table names only known ones. */
  static int tag(String keyword) {
    OptionalInt tag = Dictionary.tag(keyword);
    return tag.orElseThrow(
        () -> new IllegalStateException("the condition names the unknown element " + keyword));
  }

  /** True if the element stands here, with or without a value. */
  boolean has(String keyword) {
    return here.contains(tag(keyword));
  }

  /** True if the element stands here with a value. */
  boolean isFilled(String keyword) {
    return here.element(tag(keyword)).filter(element -> !element.isEmpty()).isPresent();
  }

  /** True if any text of the object leaves the default repertoire. */
  boolean hasExtendedText() {
    return hasExtendedText(root);
  }

  private static boolean hasExtendedText(DataSet data) {
    for (Element element : data) {
      boolean extended =
          element.strings().stream().anyMatch(s -> s.chars().anyMatch(c -> c > 0x7E));
      if (extended || element.items().stream().anyMatch(Place::hasExtendedText)) {
        return true;
      }
    }
    return false;
  }

  /** True if the object holds an element of this module, by the table. */
  boolean hasModule(String module) {
    for (Element element : root) {
      if (AttributeTable.STANDARD
          .top(element.tag())
          .filter(row -> row.module().equals(module))
          .isPresent()) {
        return true;
      }
    }
    return false;
  }
}
