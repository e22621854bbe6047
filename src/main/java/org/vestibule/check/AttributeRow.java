package org.vestibule.check;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.dicom.Vr;

/**
 * One attribute of the IOD, as {@code vl-photographic.csv} tells it.
 *
 * @param path keywords from the top, divided by {@code >}; {@code CODE>} for the code macro
 * @param type 1, 1C, 2, 2C or 3 (PS3.5 7.4)
 * @param condition when 1C and 2C demand the attribute; null for the other types
 * @param otherwiseAllowed whether it may be there when the condition doesn't hold
 * @param codes context groups whose members are wanted, or null
 * @param mostItems how many items the sequence may have; 0 for any number
 * @param content what else the items hold: {@code CODE}, {@code ANY} or nothing
 */
record AttributeRow(
    String path,
    List<Vr> vrs,
    String vm,
    String type,
    @Nullable Condition condition,
    boolean otherwiseAllowed,
    List<ValueList> values,
    @Nullable CodeBinding codes,
    int mostItems,
    String content,
    String module,
    String section) {

  AttributeRow {
    vrs = List.copyOf(vrs);
    values = List.copyOf(values);
  }

  String keyword() {
    return path.substring(path.lastIndexOf('>') + 1);
  }

  /** True for types 1 and 1C, which may not be empty. */
  boolean needsValue() {
    return type.startsWith("1");
  }

  boolean holdsCodes() {
    return content.equals("CODE");
  }

  boolean holdsAnything() {
    return content.equals("ANY");
  }

  String standard() {
    return "PS3.3 " + section;
  }
}
