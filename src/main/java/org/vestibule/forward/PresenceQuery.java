package org.vestibule.forward;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Dictionary;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.net.Answer;
import org.vestibule.dicom.net.Association;
import org.vestibule.dicom.net.Found;
import org.vestibule.dicom.net.NetUids;

/**
 * Asks at the level of single objects which of them an archive shows (Study Root, PS3.4 C.6.2), by
 * the hierarchy that every archive understands: study and series given, objects as a list of UIDs
 * (C.2.2.2.2). An archive that finds none of a list is asked for each one.
 */
final class PresenceQuery {

  private static final int QUERY_RETRIEVE_LEVEL = 0x00080052;
  private static final int MOST_IN_LIST = 100;

  /** An archive that does not look at the list answers with the whole series. */
  private static final int MOST_ANSWERS = 5_000;

  private final Association association;
  private final Map<String, Map<String, String>> found = new HashMap<>();
  private final Map<String, Map<String, String>> studies = new HashMap<>();

  PresenceQuery(Association association) {
    this.association = association;
  }

  /** What was found so far: object to identifiers, keyword to value. */
  Map<String, Map<String, String>> found() {
    return found;
  }

  /** Asks for objects of one series; the answer is the last that the archive gave. */
  Outcome<Answer> ask(List<Instance> series) {
    Outcome<Answer> last = study(series.get(0));
    for (int at = 0; at < series.size() && isDone(last); at += MOST_IN_LIST) {
      List<Instance> part = series.subList(at, Math.min(series.size(), at + MOST_IN_LIST));
      last = objects(part);
      boolean none = part.stream().noneMatch(i -> found.containsKey(i.sopInstanceUid()));
      if (none && part.size() > 1) {
        for (int i = 0; i < part.size() && isDone(last); i++) {
          last = objects(part.subList(i, i + 1));
        }
      }
    }
    return last;
  }

  private static boolean isDone(Outcome<Answer> outcome) {
    return outcome instanceof Done<Answer> done && done.value().kind() != Answer.Kind.FAILURE;
  }

  /** Patient and accession number belong to the study and are not answered below it (C.6.2). */
  private Outcome<Answer> study(Instance instance) {
    DataSet question =
        new DataSet()
            .put(QUERY_RETRIEVE_LEVEL, "STUDY")
            .put(Tags.StudyInstanceUID, instance.studyUid())
            .putEmpty(Tags.PatientID)
            .putEmpty(Tags.AccessionNumber);
    return association
        .find(NetUids.STUDY_ROOT_FIND, question, MOST_ANSWERS)
        .map(
            all -> {
              for (DataSet answer : all.answers()) {
                if (answer.string(Tags.StudyInstanceUID).equals(Optional.of(instance.studyUid()))) {
                  studies.put(instance.studyUid(), values(answer, "PatientID", "AccessionNumber"));
                }
              }
              return all.last();
            });
  }

  private Outcome<Answer> objects(List<Instance> part) {
    Instance first = part.get(0);
    Set<String> asked = part.stream().map(Instance::sopInstanceUid).collect(Collectors.toSet());
    DataSet question =
        new DataSet()
            .put(QUERY_RETRIEVE_LEVEL, "IMAGE")
            .put(Tags.StudyInstanceUID, first.studyUid())
            .put(Tags.SeriesInstanceUID, first.seriesUid())
            .put(Tags.SOPInstanceUID, asked.toArray(new String[0]));
    return association
        .find(NetUids.STUDY_ROOT_FIND, question, MOST_ANSWERS)
        .map(all -> taken(all, asked, first));
  }

  private Answer taken(Found all, Set<String> asked, Instance first) {
    for (DataSet answer : all.answers()) {
      String uid = answer.string(Tags.SOPInstanceUID).orElse("");
      if (asked.contains(uid)) {
        Map<String, String> values =
            new TreeMap<>(studies.getOrDefault(first.studyUid(), Map.of()));
        values.putAll(values(answer, "StudyInstanceUID", "SeriesInstanceUID"));
        found.put(uid, Map.copyOf(values));
      }
    }
    return all.last();
  }

  private static Map<String, String> values(DataSet answer, String... keywords) {
    Map<String, String> values = new TreeMap<>();
    for (String keyword : keywords) {
      int tag = Dictionary.tag(keyword).orElseThrow();
      answer.string(tag).ifPresent(value -> values.put(keyword, value));
    }
    return values;
  }
}
