package org.vestibule.check;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/** Whether each instance that is referred to is also listed with its series (PS3.3 C.12.2). */
final class ReferenceRules {

  private static final String SECTION = "PS3.3 C.12.2";

  private ReferenceRules() {}

  static void check(DataSet data, Findings findings) {
    Set<String> listed = new HashSet<>();
    series(data, listed);
    data.items(Tags.StudiesContainingOtherReferencedInstancesSequence)
        .forEach(study -> series(study, listed));
    Optional<String> self = data.string(Tags.SOPInstanceUID);
    for (int tag : new int[] {Tags.SourceImageSequence, Tags.ReferencedImageSequence}) {
      for (DataSet item : data.items(tag)) {
        Optional<String> uid = item.string(Tags.ReferencedSOPInstanceUID);
        if (uid.isPresent() && uid.equals(self)) {
          findings.error(tag, "refers to the object itself", SECTION);
        } else if (uid.isPresent() && !listed.contains(uid.get())) {
          findings.warning(
              tag, "refers to an instance that no ReferencedSeriesSequence lists", SECTION);
        }
      }
    }
  }

  private static void series(DataSet holder, Set<String> listed) {
    for (DataSet series : holder.items(Tags.ReferencedSeriesSequence)) {
      for (DataSet instance : series.items(Tags.ReferencedInstanceSequence)) {
        instance.string(Tags.ReferencedSOPInstanceUID).ifPresent(listed::add);
      }
    }
  }
}
