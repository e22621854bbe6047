package org.vestibule.encode;

import java.util.Collection;
import java.util.List;
import org.vestibule.dental.Code;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/** Codes as items of a code sequence (PS3.3 8.8). */
final class CodeItems {

  private CodeItems() {}

  static DataSet item(Code code) {
    return new DataSet()
        .put(Tags.CodeValue, code.value())
        .put(Tags.CodingSchemeDesignator, code.scheme())
        .put(Tags.CodeMeaning, code.meaning());
  }

  /** An item that says what the rest of it is for. */
  static DataSet purpose(Code purpose) {
    return new DataSet().put(Tags.PurposeOfReferenceCodeSequence, item(purpose));
  }

  static List<DataSet> items(Collection<Code> codes) {
    return codes.stream().map(CodeItems::item).toList();
  }
}
