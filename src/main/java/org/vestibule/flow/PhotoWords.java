package org.vestibule.flow;

import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.DecisionRecord;
import org.vestibule.dental.PatientOrientation;
import org.vestibule.dental.PatientOrientation.Edges;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/** An object's facts as a person reads them. */
public final class PhotoWords {

  /** One fact. */
  public record Line(String label, String value) {}

  private static final DateTimeFormatter SECOND =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss", Locale.ROOT);

  private final DataSet object;
  private final List<Line> lines = new ArrayList<>();

  private PhotoWords(DataSet object) {
    this.object = object;
  }

  /** The facts of an object, the clinical ones first; what is not known is left out. */
  public static List<Line> of(DataSet object) {
    PhotoWords words = new PhotoWords(object);
    words.whose();
    words.shows();
    words.picture();
    words.identity();
    return List.copyOf(words.lines);
  }

  /**
   * The facts of an object that doesn't say whose it is, to the site's own people.
   *
   * @param decided what the ledger keeps of it
   * @param takenAt when it was taken; null if its file doesn't say
   */
  static List<Line> of(DataSet object, DecisionRecord decided, @Nullable LocalDateTime takenAt) {
    PhotoWords words = new PhotoWords(object);
    words.whose(decided, takenAt);
    words.shows();
    words.picture();
    words.identity();
    return List.copyOf(words.lines);
  }

  private void whose(DecisionRecord decided, @Nullable LocalDateTime takenAt) {
    add("Patient", Descriptions.name(decided.patientName()));
    add("Patient number", joined(" of ", decided.patientId(), decided.issuer()));
    String born = decided.birthDate();
    add("Born", born == null ? "" : born);
    add("Visit", joined(", ", decided.start().substring(0, 10), decided.visit()));
    if (takenAt != null) {
      add("Taken", takenAt.truncatedTo(ChronoUnit.SECONDS).format(SECOND));
    }
    add("Referred by", Descriptions.name(decided.referrer()));
    add("Treated by", Descriptions.name(decided.dentist()));
    String day = date(text(Tags.StudyDate));
    add(
        "In the object",
        text(Tags.PatientID) + (day.isEmpty() ? ", without dates" : ", visit on " + day));
  }

  private void whose() {
    add("Patient", Descriptions.name(text(Tags.PatientName)));
    add("Patient number", joined(" of ", text(Tags.PatientID), text(Tags.IssuerOfPatientID)));
    add("Born", date(text(Tags.PatientBirthDate)));
    add("Visit", joined(", ", date(text(Tags.StudyDate)), text(Tags.StudyID)));
    add("Taken", moment(text(Tags.AcquisitionDateTime)));
    add("Referred by", Descriptions.name(text(Tags.ReferringPhysicianName)));
    add("Treated by", Descriptions.name(text(Tags.PerformingPhysicianName)));
  }

  private void shows() {
    ViewWords view = new ViewWords(object);
    add("View", view.view());
    add("", view.codedAs());
    add("Teeth and areas", view.structures());
    add("Mirror", view.mirror());
    PatientOrientation.parse(String.join("\\", object.strings(Tags.PatientOrientation)))
        .ifPresent(shown -> add("Edges of the picture", edges(shown.edges())));
    add("Region", meanings(Tags.AnatomicRegionSequence));
    add("May be visible", meanings(Tags.DeviceSequence));
    add("In words", text(Tags.ImageComments));
  }

  private void picture() {
    String maker = text(Tags.Manufacturer);
    String model = text(Tags.ManufacturerModelName);
    add("Camera", model.startsWith(maker) ? model : joined(" ", maker, model));
    add(
        "Picture",
        text(Tags.Columns)
            + " x "
            + text(Tags.Rows)
            + " samples, "
            + (text(Tags.ImageType).equals("DERIVED") ? "a part of its frame" : "whole frame"));
    add("How it was made", text(Tags.DerivationDescription));
  }

  private void identity() {
    add("Object", text(Tags.SOPInstanceUID));
    add("Series", text(Tags.SeriesInstanceUID));
    add("Study", text(Tags.StudyInstanceUID));
  }

  private void add(String label, String value) {
    if (!value.isBlank()) {
      lines.add(new Line(label, value));
    }
  }

  private String text(int tag) {
    return object.string(tag).orElse("");
  }

  private String meanings(int tag) {
    return object.items(tag).stream().map(PhotoWords::meaning).collect(Collectors.joining(", "));
  }

  private static String meaning(DataSet item) {
    return item.string(Tags.DeviceDescription).or(() -> item.string(Tags.CodeMeaning)).orElse("");
  }

  private static String edges(Edges edges) {
    return "left "
        + edges.left()
        + ", right "
        + edges.right()
        + ", top "
        + edges.top()
        + ", bottom "
        + edges.bottom();
  }

  private static String joined(String between, String first, String second) {
    return first.isBlank() || second.isBlank() ? first + second : first + between + second;
  }

  private static String date(String da) {
    return da.length() == 8
        ? da.substring(0, 4) + "-" + da.substring(4, 6) + "-" + da.substring(6)
        : da;
  }

  private static String moment(String dt) {
    if (dt.length() < 14) {
      return dt;
    }
    int sign = Math.max(dt.indexOf('+'), dt.indexOf('-'));
    String offset = sign > 0 ? " (UTC" + dt.substring(sign) + ")" : "";
    return date(dt.substring(0, 8))
        + " "
        + dt.substring(8, 10)
        + ":"
        + dt.substring(10, 12)
        + ":"
        + dt.substring(12, 14)
        + offset;
  }
}
