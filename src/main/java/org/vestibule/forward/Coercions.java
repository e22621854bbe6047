package org.vestibule.forward;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.vestibule.base.Outcome.Done;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.store.ledger.DeliveryChange;

/**
 * What an archive changed (PS3.4 B.4.1.3), beside what the object says; the practice's own
 * identifiers stay what they are.
 */
final class Coercions {

  /** The identifiers that a query may answer with. */
  private static final Map<String, Integer> IDENTIFIERS =
      Map.of(
          "StudyInstanceUID", Tags.StudyInstanceUID,
          "SeriesInstanceUID", Tags.SeriesInstanceUID,
          "PatientID", Tags.PatientID,
          "IssuerOfPatientID", Tags.IssuerOfPatientID,
          "AccessionNumber", Tags.AccessionNumber);

  private final ParcelReader reader;

  Coercions(ParcelReader reader) {
    this.reader = reader;
  }

  /** Those of these values that differ from the object's own; others than identifiers are left. */
  Map<String, DeliveryChange.Changed> of(String sopUid, Map<String, String> theirs) {
    Map<String, DeliveryChange.Changed> changed = new TreeMap<>();
    if (theirs.keySet().stream().noneMatch(IDENTIFIERS::containsKey)) {
      return changed;
    }
    if (reader.data(sopUid) instanceof Done<DataSet> object) {
      theirs.forEach(
          (keyword, value) -> {
            Integer tag = IDENTIFIERS.get(keyword);
            String ours = tag == null ? "" : object.value().string(tag).orElse("");
            if (tag != null && !ours.strip().equals(value.strip())) {
              changed.put(keyword, new DeliveryChange.Changed(ours, PlainLine.of(value)));
            }
          });
    }
    return changed;
  }

  /** By what this object's patient can be found elsewhere; empty if its file can't be read. */
  Optional<Sought> sought(Instance instance) {
    return reader.data(instance.sopInstanceUid()) instanceof Done<DataSet> object
        ? Optional.of(
            new Sought(
                instance,
                object.value().string(Tags.PatientID).orElse(""),
                object.value().string(Tags.AccessionNumber).orElse("")))
        : Optional.empty();
  }
}
