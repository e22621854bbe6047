package org.vestibule.encode;

import java.util.Collection;
import java.util.List;
import org.vestibule.dental.CatalogueCode;
import org.vestibule.dental.Code;
import org.vestibule.dental.ContextGroup;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/** Codes as items of a code sequence (PS3.3 8.8). */
final class CodeItems {

  private CodeItems() {}

  /** A value that has more characters than Code Value takes stands in Long Code Value. */
  static DataSet item(Code code) {
    boolean isShort = Fitting.fits(code.value(), Fitting.SH_CHARACTERS);
    String meaning = code.meaning().replaceAll("[\\p{Cntrl}\\\\]", " ").strip();
    return new DataSet()
        .put(isShort ? Tags.CodeValue : Tags.LongCodeValue, code.value())
        .put(Tags.CodingSchemeDesignator, code.scheme())
        .put(Tags.CodeMeaning, Fitting.cut(meaning, Fitting.LO_CHARACTERS));
  }

  /**
   * The same of a sequence whose codes are defined by a context group: one of our own says that it
   * extends the group, and whose extension it is.
   */
  static DataSet item(Code code, int cid) {
    DataSet item = item(code);
    if (!CatalogueCode.isOwn(code)) {
      return item;
    }
    ContextGroup group =
        ContextGroup.of(cid)
            .orElseThrow(() -> new IllegalStateException("the vocabulary lacks CID " + cid));
    return item.put(Tags.MappingResource, "DCMR")
        .put(Tags.ContextGroupVersion, group.version())
        .put(Tags.ContextGroupExtensionFlag, "Y")
        .put(Tags.ContextGroupLocalVersion, Recipe.CODES_VERSION)
        .put(Tags.ContextIdentifier, Integer.toString(cid))
        .put(Tags.ContextGroupExtensionCreatorUID, Recipe.CODES_CREATOR);
  }

  /** An item that says what the rest of it is for. */
  static DataSet purpose(Code purpose) {
    return new DataSet().put(Tags.PurposeOfReferenceCodeSequence, item(purpose));
  }

  static List<DataSet> items(Collection<Code> codes) {
    return codes.stream().map(CodeItems::item).toList();
  }
}
