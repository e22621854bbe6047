package org.vestibule.encode;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.vestibule.dental.Code;
import org.vestibule.dental.View;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/**
 * What the patient does in the picture, where the view's name says so (Acquisition Context, PS3.3
 * C.7.6.14; concept 130325 with values of CID 4066, PS3.16 edition 2026b). The sequence is always
 * present and mostly empty.
 */
final class ContextPart {

  private static final Code CONCEPT =
      new Code("DCM", "130325", "Orthognathic Functional Condition");
  private static final Code SMILE = new Code("SCT", "225583004", "Smiles");
  private static final Code APART =
      new Code("SCT", "1332210001", "Mouth in partially open position");

  private static final Map<String, Code> BY_VIEW =
      Map.of(
          "smile", SMILE,
          "smile-right", SMILE,
          "smile-left", SMILE,
          "face-smile", SMILE,
          "frontal-apart", APART);

  private ContextPart() {}

  static void write(DataSet to, View view) {
    List<DataSet> items = new ArrayList<>();
    Code condition = BY_VIEW.get(view.key());
    if (condition != null) {
      items.add(
          new DataSet()
              .put(Tags.ValueType, "CODE")
              .put(Tags.ConceptNameCodeSequence, CodeItems.item(CONCEPT))
              .put(Tags.ConceptCodeSequence, CodeItems.item(condition)));
    }
    to.put(Tags.AcquisitionContextSequence, items);
  }
}
