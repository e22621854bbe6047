package org.vestibule.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.DicomFile;
import org.vestibule.dicom.Element;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;

/**
 * What must be there in a Key Object Selection Document (PS3.3 A.35.4), such as the note that
 * photographs no longer count: the attributes of type 1, and every object of its content among
 * those that it declares as its evidence (C.17.6.2). The rest of the class is not checked.
 */
final class NoteRules {

  private static final String NOTE = "1.2.840.10008.5.1.4.1.1.88.59";
  private static final String SECTION = "PS3.3 A.35.4";

  private static final List<Integer> REQUIRED =
      List.of(
          Tags.SOPInstanceUID,
          Tags.StudyInstanceUID,
          Tags.SeriesInstanceUID,
          Tags.SeriesNumber,
          Tags.InstanceNumber,
          Tags.ContentDate,
          Tags.ContentTime,
          Tags.ConceptNameCodeSequence,
          Tags.ContentTemplateSequence,
          Tags.ContentSequence,
          Tags.CurrentRequestedProcedureEvidenceSequence);

  private NoteRules() {}

  static boolean isNote(byte[] file) {
    return Part10Reader.read(file) instanceof Outcome.Done<DicomFile> read
        && read.value().data().string(Tags.SOPClassUID).equals(Optional.of(NOTE));
  }

  static List<Finding> check(byte[] file) {
    DataSet data = Part10Reader.read(file).orThrow().data();
    Findings findings = new Findings();
    for (int tag : REQUIRED) {
      if (data.element(tag).filter(element -> !element.isEmpty()).isEmpty()) {
        findings.error(tag, "is missing or empty; it must have a value (type 1)", SECTION);
      }
    }
    if (!data.string(Tags.Modality).equals(Optional.of("KO"))) {
      findings.error(Tags.Modality, "must be KO", "PS3.3 C.17.6.1");
    }
    for (Element element : data) {
      ValueForms.check(element, findings);
    }
    if (!declared(data).containsAll(selected(data))) {
      findings.error(
          Tags.CurrentRequestedProcedureEvidenceSequence,
          "leaves out an object that the content names",
          "PS3.3 C.17.6.2");
    }
    return findings.list();
  }

  private static Set<String> declared(DataSet data) {
    Set<String> uids = new TreeSet<>();
    for (DataSet study : data.items(Tags.CurrentRequestedProcedureEvidenceSequence)) {
      for (DataSet series : study.items(Tags.ReferencedSeriesSequence)) {
        uids.addAll(references(series));
      }
    }
    return uids;
  }

  private static List<String> selected(DataSet data) {
    List<String> uids = new ArrayList<>();
    data.items(Tags.ContentSequence).forEach(item -> uids.addAll(references(item)));
    return uids;
  }

  private static List<String> references(DataSet holder) {
    return holder.items(Tags.ReferencedSOPSequence).stream()
        .flatMap(item -> item.string(Tags.ReferencedSOPInstanceUID).stream())
        .toList();
  }
}
