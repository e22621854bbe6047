package org.vestibule.assign;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.dental.Series;

/** Makes a visit of a row of the visit list. */
final class VisitReader {

  static final List<Column> COLUMNS =
      List.of(
          Column.required(
              "visit",
              "visit id",
              "visit key",
              "visit number",
              "appointment",
              "appointment id",
              "termin",
              "besuch"),
          Column.required(
              "patient id",
              "patient",
              "patient number",
              "patient no",
              "pid",
              "chart",
              "chart number",
              "patientennummer",
              "patienten nr",
              "patientnr",
              "patientid"),
          Column.optional("issuer", "issuer of patient id", "patient ids from"),
          Column.required("name", "patient name", "patientname", "full name"),
          Column.optional(
              "birth date",
              "date of birth",
              "dob",
              "birthdate",
              "born",
              "birthday",
              "geburtsdatum",
              "geboren"),
          Column.optional("sex", "gender", "geschlecht"),
          Column.optional("date", "visit date", "day", "datum", "tag"),
          Column.required("start", "begin", "from", "start time", "visit start", "beginn", "von"),
          Column.required("end", "until", "to", "end time", "visit end", "ende", "bis"),
          Column.optional("accession number", "accession", "accession no", "accessionnumber"),
          Column.optional(
              "referrer",
              "referring dentist",
              "referring physician",
              "referred by",
              "überweiser",
              "zuweiser"),
          Column.optional("dentist", "practitioner", "provider", "doctor", "behandler", "zahnarzt"),
          Column.optional("study uid", "study instance uid", "studyinstanceuid"),
          Column.optional("series", "views wanted", "photo series", "serie"),
          Column.optional("chair", "room", "surgery", "operatory", "zimmer", "stuhl"));

  private static final Map<String, Sex> SEXES =
      Map.ofEntries(
          Map.entry("", Sex.NOT_SAID),
          Map.entry("unknown", Sex.NOT_SAID),
          Map.entry("f", Sex.FEMALE),
          Map.entry("female", Sex.FEMALE),
          Map.entry("w", Sex.FEMALE),
          Map.entry("woman", Sex.FEMALE),
          Map.entry("weiblich", Sex.FEMALE),
          Map.entry("m", Sex.MALE),
          Map.entry("male", Sex.MALE),
          Map.entry("man", Sex.MALE),
          Map.entry("männlich", Sex.MALE),
          Map.entry("o", Sex.OTHER),
          Map.entry("other", Sex.OTHER),
          Map.entry("x", Sex.OTHER),
          Map.entry("d", Sex.OTHER),
          Map.entry("divers", Sex.OTHER),
          Map.entry("diverse", Sex.OTHER));

  private static final Pattern UID = Pattern.compile("(?:0|[1-9]\\d*)(?:\\.(?:0|[1-9]\\d*))+");
  private static final Duration LONGEST = Duration.ofHours(24);

  private final TableRow row;
  private final String issuer;
  private final List<String> warnings;

  VisitReader(TableRow row, String issuer, List<String> warnings) {
    this.row = row;
    this.issuer = issuer;
    this.warnings = warnings;
  }

  Visit read() throws Refusal {
    LocalDate date = date("date");
    LocalDateTime start = moment("start", date);
    LocalDateTime end = moment("end", start.toLocalDate());
    if (!end.isAfter(start)) {
      throw row.refusal("end", "the visit ends before it starts", "check start and end");
    }
    if (Duration.between(start, end).compareTo(LONGEST) > 0) {
      throw row.refusal(
          "end", "the visit lasts more than 24 hours", "give the patient's time in the chair");
    }
    Patient patient = patient();
    if (patient.birthDate() != null && patient.birthDate().isAfter(start.toLocalDate())) {
      throw row.refusal(
          "birth date", "it lies after the visit", "check the century; write it as 1926-03-11");
    }
    return new Visit(
        text("visit", 64, true),
        patient,
        start,
        end,
        text("accession number", 16, false),
        name("referrer"),
        name("dentist"),
        uid());
  }

  /** What the row plans for the visit. */
  VisitPlan plan() throws Refusal {
    String words = row.get("series");
    Series series = words.isEmpty() ? null : require("series", Series.find(words));
    return new VisitPlan(series, text("chair", 64, false));
  }

  private Patient patient() throws Refusal {
    String own = text("issuer", 64, false);
    String name = name("name");
    if (name.isEmpty()) {
      throw row.refusal("name", "it is empty", "write Family, Given");
    }
    return new Patient(
        text("patient id", 64, true), own.isEmpty() ? issuer : own, name, birthDate(), sex());
  }

  private String text(String column, int most, boolean required) throws Refusal {
    String text = NumberDamage.unmarked(row.get(column));
    if (required && text.isEmpty()) {
      throw row.refusal(column, "it is empty", "give each visit a key and a patient's number");
    }
    if (text.chars().anyMatch(c -> Character.isISOControl(c) || c == '\\')) {
      throw row.refusal(
          column, "line breaks and backslashes can't be kept", "write it without them");
    }
    if (text.codePointCount(0, text.length()) > most) {
      throw row.refusal(column, "it has more than " + most + " characters", "shorten it");
    }
    return text;
  }

  private String name(String column) throws Refusal {
    Outcome<PersonName> read = PersonName.read(row.get(column));
    if (!(read instanceof Outcome.Done<PersonName> done)) {
      throw refused(column, (Outcome.Refused<PersonName>) read);
    }
    if (done.value().undivided()) {
      warnings.add(
          row.place(column)
              + ": family and given name can't be told apart, so all of it is kept as the family"
              + " name; write Family, Given");
    }
    return done.value().dicom();
  }

  private Sex sex() throws Refusal {
    Sex sex = SEXES.get(row.get("sex").toLowerCase(Locale.ROOT));
    if (sex == null) {
      throw row.refusal("sex", "this is not a word that is understood", "write f, m, o or nothing");
    }
    return sex;
  }

  private String uid() throws Refusal {
    String uid = text("study uid", 64, false);
    if (!uid.isEmpty() && !UID.matcher(uid).matches()) {
      throw row.refusal(
          "study uid", "this is not a DICOM UID", "copy it whole, as text, or leave it empty");
    }
    return uid;
  }

  private @Nullable LocalDate birthDate() throws Refusal {
    LocalDate born = date("birth date");
    if (born != null && born.getYear() < 1880) {
      throw row.refusal("birth date", "nobody alive was born then", "check the year");
    }
    return born;
  }

  private @Nullable LocalDate date(String column) throws Refusal {
    CalendarText.Parts parts = CalendarText.parts(row.get(column));
    if (parts.date().isEmpty() && parts.time().isEmpty()) {
      return null;
    }
    return require(column, CalendarText.date(parts.date()));
  }

  private LocalDateTime moment(String column, @Nullable LocalDate day) throws Refusal {
    CalendarText.Parts parts = CalendarText.parts(row.get(column));
    if (parts.time().isEmpty()) {
      throw row.refusal(
          column, "it has no time of day", "write date and time, such as 2026-03-11 09:00");
    }
    LocalTime time = require(column, CalendarText.time(parts.time()));
    if (!parts.date().isEmpty()) {
      return require(column, CalendarText.date(parts.date())).atTime(time);
    }
    if (day == null) {
      throw row.refusal(column, "it has no date", "write date and time, such as 2026-03-11 09:00");
    }
    return day.atTime(time);
  }

  private <T> T require(String column, Outcome<T> outcome) throws Refusal {
    if (outcome instanceof Outcome.Done<T> done) {
      return done.value();
    }
    throw refused(column, (Outcome.Refused<T>) outcome);
  }

  private Refusal refused(String column, Outcome.Refused<?> refused) {
    return row.refusal(column, refused.reason(), refused.advice());
  }
}
