package org.vestibule.flow;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Patient;
import org.vestibule.assign.Visit;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.DicomFile;
import org.vestibule.dicom.Element;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Part10Writer;
import org.vestibule.dicom.Vr;
import org.vestibule.encode.EncodedObject;
import org.vestibule.flow.DoorRules.Identity;
import org.vestibule.release.LeakSearch;
import org.vestibule.release.Secrets;

/**
 * Searches an object that was made without identity for what is known of its patient, visit, file
 * and practice, before it is written: the same search as before a release.
 */
final class DoorSearch {

  private static final String FILE = "object.dcm";
  private static final String NO_PRACTICE = "practice";

  private final Set<String> texts = new HashSet<>();
  private final Set<LocalDate> days = new HashSet<>();

  private DoorSearch() {}

  /** Why the objects can't be kept; empty if none holds what it must not. */
  static Optional<Refused<Filer.Made>> objection(Practice practice, Filer.Made made) {
    Filer.Task task = made.task();
    if (task.making().hasIdentity()) {
      return Optional.empty();
    }
    DoorSearch known = new DoorSearch();
    known.practice(practice.settings());
    known.visit(task.decision().visit());
    known.file(made.picture());
    known.texts.addAll(made.traces().texts());
    known.allow(practice, task);
    Secrets secrets = new Secrets(known.texts, known.days, made.traces().bytes());
    LeakSearch search = new LeakSearch(secrets);
    for (EncodedObject object : made.objects()) {
      if (isHit(search, secrets, object.toByteArray())) {
        return Optional.of(
            new Refused<>(
                "made without identity, its object would still hold a name, a number or a day that"
                    + " is known of its patient, visit, file or practice",
                "look whether a view of your own is called so; if a person or the practice is called"
                    + " like a word of the trade, tell who looks after this program"));
      }
    }
    return Optional.empty();
  }

  private void practice(Settings settings) {
    add(settings.practiceName());
    if (!settings.practiceId().equals(NO_PRACTICE)) {
      add(settings.practiceId());
    }
  }

  private void visit(Visit visit) {
    Patient patient = visit.patient();
    people(patient.name());
    people(visit.referrer());
    people(visit.dentist());
    add(patient.id());
    add(patient.issuer());
    add(visit.key());
    add(visit.accessionNumber());
    add(visit.studyInstanceUid());
    day(patient.birthDate());
    day(visit.start().toLocalDate());
  }

  private void file(Picture picture) {
    add(picture.name().substring(picture.name().lastIndexOf('/') + 1));
    add(picture.hash().hex());
    if (picture.facts().takenAt() != null) {
      day(picture.facts().takenAt().toLocalDate());
    }
  }

  /** A day that the objects tell instead may be a true one of this patient by chance. */
  private void allow(Practice practice, Filer.Task task) {
    if (task.making().identity() == Identity.DATES_MOVED) {
      Patient patient = task.decision().visit().patient();
      long shift = new Door(practice).shiftDays(patient.issuer(), patient.id());
      Set<LocalDate> moved = new HashSet<>();
      days.forEach(day -> moved.add(day.plusDays(shift)));
      days.removeAll(moved);
    }
  }

  private void people(String pn) {
    List<String> names = ReleaseSecrets.names(pn);
    names.forEach(this::add);
  }

  private void add(String text) {
    if (!text.isBlank()) {
      texts.add(text.strip());
    }
  }

  private void day(@Nullable LocalDate day) {
    if (day != null) {
      days.add(day);
    }
  }

  /** A find counts only where it isn't a number by chance inside a UID that was made by HMAC. */
  private static boolean isHit(LeakSearch search, Secrets secrets, byte[] object) {
    try {
      if (search.find(FILE, object).isEmpty()) {
        return false;
      }
      DicomFile file = Part10Reader.read(object).orThrow();
      DataSet rest = withoutUids(file.data(), secrets);
      byte[] plain = Part10Writer.write(rest, file.transferSyntax()).orThrow();
      return search.find(FILE, plain).isPresent();
    } catch (IOException e) {
      throw new UncheckedIOException("searching an object in memory failed", e);
    }
  }

  private static DataSet withoutUids(DataSet data, Secrets secrets) {
    DataSet rest = new DataSet();
    for (Element element : data) {
      boolean isMade =
          element.vr() == Vr.UI
              && element.strings().stream()
                  .allMatch(uid -> uid.startsWith("2.25.") && !secrets.texts().contains(uid));
      if (isMade) {
        rest.put(element.tag(), Vr.UI, "2.25.0");
      } else if (element.vr() == Vr.SQ) {
        rest.put(
            element.tag(),
            element.items().stream().map(item -> withoutUids(item, secrets)).toList());
      } else {
        rest.put(element);
      }
    }
    return rest;
  }
}
