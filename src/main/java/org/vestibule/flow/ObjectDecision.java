package org.vestibule.flow;

import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Crop;
import org.vestibule.assign.Decision;
import org.vestibule.assign.Patient;
import org.vestibule.assign.Sex;
import org.vestibule.assign.Visit;
import org.vestibule.assign.VisitList;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.dental.Accessory;
import org.vestibule.dental.AccessoryCatalogue;
import org.vestibule.dental.Area;
import org.vestibule.dental.CatalogueCode;
import org.vestibule.dental.Code;
import org.vestibule.dental.Edge;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Occupant;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.Tooth;
import org.vestibule.dental.ToothPosition;
import org.vestibule.dental.View;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/**
 * What was decided about a photograph, as far as its object says it. The frame as it lies in the
 * object stands for the photograph's file.
 */
final class ObjectDecision {

  private static final Pattern CROP =
      Pattern.compile("(\\d+) x (\\d+) samples from column (\\d+), row (\\d+) of the source image");

  private final Practice practice;
  private final DataSet frame;
  private final @Nullable DataSet crop;
  private final ObjectComment comment;

  ObjectDecision(Practice practice, DataSet frame, @Nullable DataSet crop) {
    this.practice = practice;
    this.frame = frame;
    this.crop = crop;
    this.comment = new ObjectComment(text(Tags.ImageComments));
  }

  ObjectComment comment() {
    return comment;
  }

  /**
   * @param mirror by which the frame is to be laid
   * @throws java.time.DateTimeException if a date in it is none
   */
  Outcome<Decision> read(
      Mirror mirror,
      @Nullable Incisors incisors,
      @Nullable Edge up,
      String by,
      List<String> facts) {
    Optional<View> view = view();
    if (view.isEmpty()) {
      return Outcome.refused(
          "its view is not known here", "put the practice's file of views back, then try again");
    }
    return visit()
        .map(
            visit ->
                new Decision(
                    visit,
                    view.get(),
                    teeth(view.get()),
                    mirror,
                    incisors,
                    up,
                    true,
                    crop(),
                    accessories(),
                    comment.stage(),
                    comment.treatment(),
                    comment.note(),
                    false,
                    false,
                    by,
                    facts));
  }

  private Optional<View> view() {
    return frame.items(Tags.ViewCodeSequence).stream()
        .flatMap(item -> Stream.concat(Stream.of(item), modifiers(item)))
        .map(ViewWords::code)
        .filter(code -> CatalogueCode.isOwn(code) && !CatalogueCode.saysCorrected(code))
        .findFirst()
        .flatMap(code -> practice.views().byKey(code.value()));
  }

  private static Stream<DataSet> modifiers(DataSet view) {
    return view.items(Tags.ViewModifierCodeSequence).stream();
  }

  private Outcome<Visit> visit() {
    String key = text(Tags.StudyID);
    Optional<LocalDateTime> start =
        frame
            .date(Tags.StudyDate)
            .map(day -> day.atTime(frame.time(Tags.StudyTime).orElse(LocalTime.MIDNIGHT)));
    if (key.isEmpty() || start.isEmpty()) {
      return Outcome.refused("it doesn't say of which visit it is", "take its photograph in again");
    }
    Patient patient =
        new Patient(
            text(Tags.PatientID),
            text(Tags.IssuerOfPatientID),
            text(Tags.PatientName),
            frame.date(Tags.PatientBirthDate).orElse(null),
            sex());
    String study = text(Tags.StudyInstanceUID);
    boolean derived =
        practice.store().ledger().restored().isOurs(study, patient.issuer(), patient.id(), key);
    return Outcome.done(
        new Visit(
            key,
            patient,
            start.get(),
            end(key, patient, start.get()),
            text(Tags.AccessionNumber),
            text(Tags.ReferringPhysicianName),
            text(Tags.PerformingPhysicianName),
            derived ? "" : study));
  }

  /** No object says when a visit ended; a list that still knows it does. */
  private LocalDateTime end(String key, Patient patient, LocalDateTime start) {
    return new VisitBook(practice).all() instanceof Done<VisitList> known
        ? known
            .value()
            .byKey(key)
            .filter(visit -> visit.patient().id().equals(patient.id()))
            .map(Visit::end)
            .filter(end -> !end.isBefore(start))
            .orElse(start)
        : start;
  }

  private Sex sex() {
    for (Sex sex : Sex.values()) {
      if (sex.dicom().equals(text(Tags.PatientSex))) {
        return sex;
      }
    }
    return Sex.NOT_SAID;
  }

  private Teeth teeth(View view) {
    List<ToothPosition> positions = new ArrayList<>(comment.positions());
    List<Area> areas = new ArrayList<>();
    boolean own = view.structure() != null;
    for (DataSet item : frame.items(Tags.PrimaryAnatomicStructureSequence)) {
      Optional<Tooth> tooth = Tooth.byCode(ViewWords.code(item));
      if (tooth.isPresent()) {
        boolean said = positions.stream().anyMatch(at -> at.tooth() == tooth.get());
        if (!said) {
          positions.add(new ToothPosition(tooth.get(), Occupant.TOOTH));
        }
      } else if (own) {
        own = false;
      } else {
        List<Code> narrowed =
            item.items(Tags.PrimaryAnatomicStructureModifierSequence).stream()
                .map(ViewWords::code)
                .toList();
        Area.ofCodes(ViewWords.code(item), narrowed).ifPresent(areas::add);
      }
    }
    return new Teeth(positions, areas);
  }

  private List<Accessory> accessories() {
    List<Accessory> found = new ArrayList<>();
    for (DataSet item : frame.items(Tags.DeviceSequence)) {
      Code code = ViewWords.code(item);
      AccessoryCatalogue.all().stream()
          .filter(one -> isCodedAs(one, code))
          .filter(one -> item.string(Tags.DeviceDescription).equals(Optional.of(one.description())))
          .findFirst()
          .ifPresent(found::add);
    }
    return found;
  }

  private static boolean isCodedAs(Accessory accessory, Code code) {
    Code standard = accessory.code();
    return standard != null
        ? standard.value().equals(code.value())
        : accessory.key().toUpperCase(Locale.ROOT).equals(code.value());
  }

  private @Nullable Crop crop() {
    if (crop == null) {
      return null;
    }
    Matcher place = CROP.matcher(crop.string(Tags.DerivationDescription).orElse(""));
    if (!place.find()) {
      throw new IllegalArgumentException("a crop says where it lies");
    }
    double width = frame.integer(Tags.Columns).orElseThrow();
    double height = frame.integer(Tags.Rows).orElseThrow();
    double left = Integer.parseInt(place.group(3));
    double top = Integer.parseInt(place.group(4));
    return new Crop(
        left / width,
        top / height,
        (left + Integer.parseInt(place.group(1))) / width,
        (top + Integer.parseInt(place.group(2))) / height);
  }

  private String text(int tag) {
    return frame.string(tag).orElse("");
  }
}
