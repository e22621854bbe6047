package org.vestibule.forward;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.net.Answer;
import org.vestibule.dicom.net.Association;
import org.vestibule.dicom.net.Found;
import org.vestibule.dicom.net.NetUids;

/**
 * Looks for objects that an archive filed under another study, where it grants no relational
 * queries: level by level (PS3.4 C.4.1.2.2.1), from the studies of the accession number or the
 * patient to their series and to the object itself. The number of questions is bounded; one that
 * fails brings nothing, and what was not found in the end is not shown.
 */
final class ElsewhereQuery {

  private static final int QUERY_RETRIEVE_LEVEL = 0x00080052;

  /** A patient of twenty years has some forty studies of a few series each. */
  private static final int MOST_QUESTIONS = 200;

  private static final int MOST_ANSWERS = 100;

  private final Association association;
  private final long endNanos;
  private final Map<String, Map<String, String>> found = new HashMap<>();
  private int questions;
  private boolean over;

  ElsewhereQuery(Association association, long endNanos) {
    this.association = association;
    this.endNanos = endNanos;
  }

  /** SOP Instance UID to the identifiers under which the archive shows it. */
  Map<String, Map<String, String>> look(List<Sought> sought) {
    for (boolean byAccession : new boolean[] {true, false}) {
      Map<String, List<Instance>> groups = new LinkedHashMap<>();
      for (Sought one : sought) {
        String key = byAccession ? one.accessionNumber() : one.patientId();
        if (isKey(key) && !found.containsKey(one.instance().sopInstanceUid())) {
          groups.computeIfAbsent(key, any -> new ArrayList<>()).add(one.instance());
        }
      }
      groups.forEach(
          (key, group) -> studies(byAccession ? Tags.AccessionNumber : Tags.PatientID, key, group));
    }
    return Map.copyOf(found);
  }

  /** A backslash would make two values of one (PS3.5 6.4). */
  private static boolean isKey(String value) {
    return !value.isBlank() && value.indexOf('\\') < 0;
  }

  private void studies(int by, String value, List<Instance> group) {
    DataSet question =
        level("STUDY")
            .putEmpty(Tags.StudyInstanceUID)
            .putEmpty(Tags.PatientID)
            .putEmpty(Tags.AccessionNumber)
            .put(by, value);
    for (DataSet study : ask(question)) {
      String uid = study.string(Tags.StudyInstanceUID).orElse("");
      // Its own study was asked before; of two archives' answers only UIDs are to be relied on.
      if (!uid.isEmpty()
          && isOf(study.string(by), value)
          && group.stream().noneMatch(one -> one.studyUid().equals(uid))) {
        series(study, uid, group);
      }
    }
  }

  /**
   * False for a study of somebody else: of a value with * or ? the archive answers with whatever
   * matches it (PS3.4 C.2.2.2.4). Of any other value it may answer with what it made of it, such as
   * the number under which two patients were joined.
   */
  private static boolean isOf(Optional<String> answered, String asked) {
    boolean wild = asked.indexOf('*') >= 0 || asked.indexOf('?') >= 0;
    return !wild || answered.filter(value -> value.strip().equals(asked.strip())).isPresent();
  }

  private void series(DataSet study, String studyUid, List<Instance> group) {
    DataSet question =
        level("SERIES").put(Tags.StudyInstanceUID, studyUid).putEmpty(Tags.SeriesInstanceUID);
    for (DataSet series : missing(group).isEmpty() ? List.<DataSet>of() : ask(question)) {
      String uid = series.string(Tags.SeriesInstanceUID).orElse("");
      Collection<String> asked = missing(group);
      if (!uid.isEmpty() && !asked.isEmpty()) {
        objects(study, studyUid, uid, asked);
      }
    }
  }

  private List<String> missing(List<Instance> group) {
    return group.stream()
        .map(Instance::sopInstanceUid)
        .filter(uid -> !found.containsKey(uid))
        .toList();
  }

  private void objects(DataSet study, String studyUid, String seriesUid, Collection<String> asked) {
    DataSet question =
        level("IMAGE")
            .put(Tags.StudyInstanceUID, studyUid)
            .put(Tags.SeriesInstanceUID, seriesUid)
            .put(Tags.SOPInstanceUID, asked.toArray(new String[0]));
    for (DataSet object : ask(question)) {
      String uid = object.string(Tags.SOPInstanceUID).orElse("");
      if (asked.contains(uid)) {
        Map<String, String> known = new TreeMap<>();
        known.put("StudyInstanceUID", studyUid);
        known.put("SeriesInstanceUID", seriesUid);
        study.string(Tags.PatientID).ifPresent(value -> known.put("PatientID", value));
        study.string(Tags.AccessionNumber).ifPresent(value -> known.put("AccessionNumber", value));
        found.put(uid, Map.copyOf(known));
      }
    }
  }

  private static DataSet level(String level) {
    return new DataSet().put(QUERY_RETRIEVE_LEVEL, level);
  }

  private List<DataSet> ask(DataSet question) {
    over |= questions++ >= MOST_QUESTIONS || endNanos - System.nanoTime() <= 0;
    if (over) {
      return List.of();
    }
    Outcome<Found> asked = association.find(NetUids.STUDY_ROOT_FIND, question, MOST_ANSWERS);
    over = !association.isOpen();
    if (!(asked instanceof Done<Found> answered)
        || answered.value().last().kind() == Answer.Kind.FAILURE) {
      return List.of();
    }
    return answered.value().answers();
  }
}
