package org.vestibule.flow.look;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.vestibule.base.Turn;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.Photo;
import org.vestibule.jpeg.FrameSize;

/** What a sheet says about one photograph: facts, what hides in it, what to look at twice. */
public final class PhotoCard {

  /** More digital zoom than this leaves too few real pixels (common practice, no source). */
  static final double MOST_ZOOM = 2;

  /** Fewer samples than this are too few for a clinical frame (guideline: 5 megapixels). */
  private static final long FEW_SAMPLES = 5_000_000;

  private final Photo photo;
  private final CaptureFacts facts;
  private final List<String> notes = new ArrayList<>();

  private PhotoCard(Photo photo) {
    this.photo = photo;
    this.facts = photo.facts();
  }

  /**
   * A card for a photograph.
   *
   * @param photo the photograph
   * @param more sentences that stand before all others, such as why it waits
   */
  public static Card of(Photo photo, List<String> more) {
    PhotoCard card = new PhotoCard(photo);
    card.notes.addAll(more);
    card.oddities();
    return new Card(
        photo.arrival().name(), Thumbnail.of(photo), card.marks(), card.facts(), card.notes);
  }

  private List<Mark> marks() {
    List<Mark> marks = new ArrayList<>();
    if (tooMuchZoom(photo)) {
      marks.add(
          new Mark(
              "digital zoom " + Say.decimal(Objects.requireNonNull(facts.digitalZoomRatio())) + "×",
              Tone.CARE));
    }
    if (facts.edited()) {
      marks.add(new Mark("perhaps edited", Tone.CARE));
    }
    if (facts.frontLens()) {
      marks.add(new Mark("front camera", Tone.CARE));
    }
    if (photo.structure().frame().size().area() < FEW_SAMPLES) {
      marks.add(new Mark("under 5 MP", Tone.PLAIN));
    }
    return marks;
  }

  static boolean tooMuchZoom(Photo photo) {
    Double ratio = photo.facts().digitalZoomRatio();
    return ratio != null && ratio > MOST_ZOOM;
  }

  private List<Fact> facts() {
    List<Fact> list = new ArrayList<>();
    LocalDateTime taken = facts.takenAt();
    list.add(
        new Fact(
            "Taken",
            taken == null
                ? "no time stated"
                : Say.time(taken) + (facts.offset() == null ? "" : " (" + zone() + ")")));
    String camera = facts.camera();
    list.add(new Fact("Camera", camera == null ? "not stated" : camera));
    list.add(new Fact("Pixels", pixels()));
    String exposure = exposure();
    if (!exposure.isEmpty()) {
      list.add(new Fact("Exposure", exposure));
    }
    list.add(
        new Fact(
            "Hidden",
            photo.hidden().isEmpty()
                ? "nothing found"
                : photo.hidden().stream()
                    .map(hidden -> hidden.kind().words())
                    .collect(Collectors.joining(", "))));
    return list;
  }

  private String zone() {
    String id = Objects.requireNonNull(facts.offset()).getId();
    return "UTC" + (id.equals("Z") ? "" : id);
  }

  /** Width and height as shown upright, and their product in millions (megapixels). */
  private String pixels() {
    FrameSize size = photo.structure().frame().size();
    Integer orientation = facts.orientation();
    boolean swapped = Turn.asShown(orientation).swapsAxes();
    return String.format(
        Locale.ROOT,
        "%d × %d, %s\u00A0MP",
        swapped ? size.height() : size.width(),
        swapped ? size.width() : size.height(),
        Say.decimal(size.area() / 1e6));
  }

  private String exposure() {
    Double fNumber = facts.fNumber();
    return Stream.of(
            Say.exposure(facts.exposureSeconds()),
            fNumber == null ? null : "f/" + Say.decimal(fNumber),
            facts.iso() == null ? null : "ISO " + facts.iso())
        .filter(Objects::nonNull)
        .collect(Collectors.joining(", "));
  }

  private void oddities() {
    if (facts.frontLens()) {
      notes.add("Front cameras may save mirrored: left and right are not known from the file.");
    }
    if (facts.edited()) {
      notes.add(
          "Perhaps edited, so left and right are not known from the file: "
              + String.join("; ", facts.editingTraces())
              + ".");
    }
    photo.warnings().forEach(warning -> notes.add(Say.sentence(warning)));
  }
}
