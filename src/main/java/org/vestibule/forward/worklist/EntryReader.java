package org.vestibule.forward.worklist;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.vestibule.base.Outcome;
import org.vestibule.dental.Code;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/** Reads one answer of a worklist; what an order can't do without is refused, never made up. */
final class EntryReader {

  private static final Pattern UID = Pattern.compile("(?:0|[1-9]\\d*)(?:\\.(?:0|[1-9]\\d*))+");
  private static final int MOST_UID = 64;
  private static final int MOST_SHORT = 16;
  private static final int MOST_LONG = 64;

  private final DataSet answer;
  private final List<String> faults = new ArrayList<>();

  private EntryReader(DataSet answer) {
    this.answer = answer;
  }

  /** The steps of one answer; usually one. */
  static Outcome<List<WorklistEntry>> read(DataSet answer) {
    return new EntryReader(answer).read();
  }

  private Outcome<List<WorklistEntry>> read() {
    List<WorklistEntry> entries = new ArrayList<>();
    List<DataSet> steps = answer.items(WorklistTags.STEP_SEQUENCE);
    if (steps.isEmpty()) {
      faults.add("no scheduled step");
    }
    for (DataSet step : steps) {
      Optional<LocalDate> day = step.date(WorklistTags.START_DATE);
      Optional<LocalTime> time = step.time(WorklistTags.START_TIME);
      if (day.isEmpty() || time.isEmpty()) {
        faults.add("no start date and time");
        continue;
      }
      entries.add(entry(step, day.get(), time.get()));
    }
    return faults.isEmpty()
        ? Outcome.done(entries)
        : Outcome.refused(
            "an order of the worklist can't be used: it has " + String.join(", ", faults),
            "have it put right in the system that gives the orders");
  }

  private WorklistEntry entry(DataSet step, LocalDate day, LocalTime time) {
    return new WorklistEntry(
        uid(),
        text(answer, Tags.AccessionNumber, MOST_SHORT, "accession number"),
        required(text(answer, Tags.PatientID, MOST_LONG, "patient number"), "patient number"),
        text(answer, Tags.IssuerOfPatientID, MOST_LONG, "issuer of the patient number"),
        required(name(answer, Tags.PatientName), "patient name"),
        answer.date(Tags.PatientBirthDate).orElse(null),
        sex(),
        name(answer, Tags.ReferringPhysicianName),
        name(step, WorklistTags.PERFORMING_PHYSICIAN),
        day.atTime(time).withNano(0),
        text(step, WorklistTags.STATION_TITLE, MOST_SHORT, "station"),
        text(step, Tags.Modality, MOST_SHORT, "modality"),
        text(answer, Tags.RequestedProcedureID, MOST_SHORT, "requested procedure id"),
        text(answer, Tags.RequestedProcedureDescription, MOST_LONG, "description"),
        codes(answer, Tags.RequestedProcedureCodeSequence),
        text(step, Tags.ScheduledProcedureStepID, MOST_SHORT, "step id"),
        text(step, Tags.ScheduledProcedureStepDescription, MOST_LONG, "step description"),
        codes(step, Tags.ScheduledProtocolCodeSequence));
  }

  private String uid() {
    String uid = answer.string(Tags.StudyInstanceUID).orElse("").strip();
    if (uid.length() > MOST_UID || !UID.matcher(uid).matches()) {
      faults.add(uid.isEmpty() ? "no study UID" : "a study UID that is none");
    }
    return uid;
  }

  private String required(String value, String what) {
    if (value.isEmpty()) {
      faults.add("no " + what);
    }
    return value;
  }

  private String text(DataSet from, int tag, int most, String what) {
    String text = from.string(tag).orElse("").strip();
    boolean plain = text.chars().noneMatch(c -> Character.isISOControl(c) || c == '\\');
    if (!plain || text.codePointCount(0, text.length()) > most) {
      faults.add("a " + what + " that DICOM does not allow");
      return "";
    }
    return text;
  }

  /** The alphabetic form, without the carets at its end, which mean nothing (PS3.5 6.2). */
  private String name(DataSet from, int tag) {
    String name = from.string(tag).orElse("");
    String alphabetic = name.split("=", 2)[0].strip().replaceAll("[\\^ ]+$", "");
    boolean plain = alphabetic.chars().noneMatch(c -> Character.isISOControl(c) || c == '\\');
    if (!plain || alphabetic.codePointCount(0, alphabetic.length()) > MOST_LONG) {
      faults.add("a name that DICOM does not allow");
      return "";
    }
    return alphabetic;
  }

  private String sex() {
    String sex = answer.string(Tags.PatientSex).orElse("").strip();
    return List.of("F", "M", "O").contains(sex) ? sex : "";
  }

  private static List<Code> codes(DataSet from, int tag) {
    List<Code> codes = new ArrayList<>();
    for (DataSet item : from.items(tag)) {
      String value = item.string(Tags.CodeValue).orElse("").strip();
      String scheme = item.string(Tags.CodingSchemeDesignator).orElse("").strip();
      if (!value.isEmpty() && !scheme.isEmpty()) {
        codes.add(new Code(scheme, value, item.string(Tags.CodeMeaning).orElse("").strip()));
      }
    }
    return codes;
  }
}
