package org.vestibule.forward;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
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
 * (C.2.2.2.2). What a list does not bring is asked for by itself, and then wherever the archive has
 * it, if it lets us ask so (C.4.1.3.2.2, relational queries). A question that fails answers
 * nothing.
 */
final class PresenceQuery {

  private static final int QUERY_RETRIEVE_LEVEL = 0x00080052;
  private static final int MOST_IN_LIST = 100;

  /** An archive that does not look at the list answers with the whole series. */
  private static final int MOST_ANSWERS = 5_000;

  private final Association association;
  private final long endNanos;
  private final Map<String, Map<String, String>> found = new HashMap<>();
  private final Map<String, Map<String, String>> studies = new HashMap<>();
  private final Set<String> open = new HashSet<>();
  private int status = StoreAnswer.NO_STATUS;
  private String trouble = "";

  /**
   * @param most how long all questions may take together; what was not asked by then stays open
   */
  PresenceQuery(Association association, Duration most) {
    this.association = association;
    this.endNanos = System.nanoTime() + most.toNanos();
  }

  /** What all questions came to. */
  PresenceAnswer answer() {
    return open.isEmpty()
        ? new PresenceAnswer.Answered(found)
        : new PresenceAnswer.Failed(status, trouble, !association.isOpen(), found, open);
  }

  /** Asks for objects of one series. */
  void ask(List<Instance> series) {
    if (!study(series.get(0))) {
      series.forEach(instance -> open.add(instance.sopInstanceUid()));
      return;
    }
    for (int at = 0; at < series.size(); at += MOST_IN_LIST) {
      List<Instance> part = series.subList(at, Math.min(series.size(), at + MOST_IN_LIST));
      ask(part, false);
      if (association.isRelational()) {
        ask(part.stream().filter(this::isMissing).toList(), true);
      }
    }
  }

  /** As a list; what that does not bring, one by one, since an archive may not look at lists. */
  private void ask(List<Instance> part, boolean anywhere) {
    if (part.isEmpty()) {
      return;
    }
    if (!objects(part, anywhere)) {
      part.stream()
          .map(Instance::sopInstanceUid)
          .filter(uid -> !found.containsKey(uid))
          .forEach(open::add);
    } else if (part.size() > 1) {
      for (Instance one : part.stream().filter(this::isMissing).toList()) {
        if (!objects(List.of(one), anywhere)) {
          open.add(one.sopInstanceUid());
        }
      }
    }
  }

  private boolean isMissing(Instance instance) {
    String uid = instance.sopInstanceUid();
    return !found.containsKey(uid) && !open.contains(uid);
  }

  /** Patient and accession number belong to the study and are not answered below it (C.6.2). */
  private boolean study(Instance instance) {
    DataSet question =
        new DataSet()
            .put(QUERY_RETRIEVE_LEVEL, "STUDY")
            .put(Tags.StudyInstanceUID, instance.studyUid())
            .putEmpty(Tags.PatientID)
            .putEmpty(Tags.AccessionNumber);
    List<DataSet> answers = new ArrayList<>();
    boolean answered = find(question, answers);
    for (DataSet answer : answers) {
      if (answer.string(Tags.StudyInstanceUID).equals(Optional.of(instance.studyUid()))) {
        studies.put(instance.studyUid(), values(answer, "PatientID", "AccessionNumber"));
      }
    }
    return answered;
  }

  /** False if there was no answer. */
  private boolean objects(List<Instance> part, boolean anywhere) {
    Instance first = part.get(0);
    Set<String> asked = part.stream().map(Instance::sopInstanceUid).collect(Collectors.toSet());
    DataSet question =
        new DataSet()
            .put(QUERY_RETRIEVE_LEVEL, "IMAGE")
            .put(Tags.SOPInstanceUID, asked.toArray(new String[0]));
    if (anywhere) {
      question
          .putEmpty(Tags.StudyInstanceUID)
          .putEmpty(Tags.SeriesInstanceUID)
          .putEmpty(Tags.PatientID)
          .putEmpty(Tags.AccessionNumber);
    } else {
      question
          .put(Tags.StudyInstanceUID, first.studyUid())
          .put(Tags.SeriesInstanceUID, first.seriesUid());
    }
    List<DataSet> answers = new ArrayList<>();
    boolean answered = find(question, answers);
    for (DataSet answer : answers) {
      String uid = answer.string(Tags.SOPInstanceUID).orElse("");
      if (asked.contains(uid)) {
        found.put(uid, identifiers(answer, anywhere ? "" : first.studyUid()));
      }
    }
    return answered;
  }

  private Map<String, String> identifiers(DataSet answer, String studyUid) {
    Map<String, String> values = new TreeMap<>(studies.getOrDefault(studyUid, Map.of()));
    values.putAll(values(answer, "StudyInstanceUID", "SeriesInstanceUID"));
    if (studyUid.isEmpty()) {
      values.putAll(values(answer, "PatientID", "AccessionNumber"));
    }
    return Map.copyOf(values);
  }

  /**
   * One question.
   *
   * @param answers gets what was answered, also before it failed
   * @return false if the archive failed, so that what it did not name may be there all the same
   */
  private boolean find(DataSet question, List<DataSet> answers) {
    if (endNanos - System.nanoTime() <= 0) {
      trouble(StoreAnswer.NO_STATUS, "its answers took too long together");
      return false;
    }
    Outcome<Found> asked = association.find(NetUids.STUDY_ROOT_FIND, question, MOST_ANSWERS);
    if (!(asked instanceof Done<Found> done)) {
      trouble(StoreAnswer.NO_STATUS, PlainLine.of(((Refused<Found>) asked).sentence()));
      return false;
    }
    answers.addAll(done.value().answers());
    Answer last = done.value().last();
    if (last.kind() == Answer.Kind.FAILURE) {
      trouble(last.status(), last.sentence());
      return false;
    }
    return true;
  }

  /** The first trouble is told; what follows may only be its consequence. */
  private void trouble(int given, String words) {
    if (trouble.isEmpty()) {
      status = given;
      trouble = words;
    }
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
