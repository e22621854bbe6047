package org.vestibule.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.jpeg.JpegFrame;
import org.vestibule.jpeg.JpegStructure;
import org.vestibule.jpeg.SoundScan;

/** Reads one JPEG file's bytes into a photograph, or into the reason why it is none. */
final class PhotoReader {

  private final Arrival arrival;
  private final byte[] bytes;
  private final Neighbours neighbours;
  private @Nullable LeftOut refusal;
  private @Nullable CaptureFacts facts;

  PhotoReader(Arrival arrival, byte[] bytes, Neighbours neighbours) {
    this.arrival = arrival;
    this.bytes = bytes;
    this.neighbours = neighbours;
  }

  Optional<Photo> read() {
    Outcome<JpegStructure> outcome = JpegStructure.read(bytes);
    if (outcome instanceof Outcome.Refused<JpegStructure> refused) {
      return refuse(refused.reason(), refused.advice());
    }
    JpegStructure structure = outcome.orThrow();
    Photo photo = photo(structure);
    if (structure.endMarkerMissing()) {
      return cutShort(photo);
    }
    return Optional.of(photo);
  }

  /** A file that breaks off waits, with what is left of it: it may be the only one there is. */
  private Optional<Photo> cutShort(Photo photo) {
    facts = photo.facts();
    String where = "the file breaks off at byte " + bytes.length;
    return SoundScan.check(bytes) instanceof Outcome.Refused<JpegStructure> refused
        ? refuse(
            where + ": " + refused.reason(),
            "copy it from the phone again; if the phone's own file is cut short too, a person can"
                + " file the sound part (file --salvage)")
        : refuse(
            where + ", before the picture's end marker, but every row of the picture is there",
            "copy it from the phone again; if the phone's own file is the same, file it: nothing of"
                + " the picture is missing");
  }

  /** Why there is no photograph. */
  LeftOut refusal() {
    if (refusal == null) {
      throw new IllegalStateException("the photograph was not refused");
    }
    return refusal;
  }

  private Optional<Photo> refuse(String reason, String advice) {
    refusal =
        new LeftOut(arrival.name(), LeftOutKind.DAMAGED, reason, advice, arrival.hash(), facts);
    return Optional.empty();
  }

  private Photo photo(JpegStructure structure) {
    Segments segments = new Segments(bytes, structure);
    List<String> warnings = new ArrayList<>(structure.warnings());
    ExifTags tags = segments.exif(warnings);
    CaptureFactsBuilder builder = FactsReader.read(tags, warnings);
    CaptureFacts facts = IccFacts.read(structure, builder, warnings).build();
    sizes(structure.frame(), facts, warnings);
    List<String> traces = new EditingTraces(segments, tags, facts).find();
    if (SameShot.isEditedName(arrival.name())) {
      traces.add("its name, with an E before the number, is that of an edited copy");
    }
    if (neighbours.hasEditSidecar(arrival.name())) {
      traces.add("a note of edits made on the phone (.aae) lies beside it");
    }
    neighbours
        .copyOf(arrival.name())
        .ifPresent(
            original ->
                warnings.add(
                    "its name says it is a second copy of "
                        + FileNames.shown(FileNames.last(original))
                        + ", but their bytes differ"));
    return new Photo(
        arrival,
        builder.editingTraces(traces).build(),
        structure,
        HiddenReader.find(segments, tags),
        warnings);
  }

  private static void sizes(JpegFrame frame, CaptureFacts facts, List<String> warnings) {
    Integer width = facts.exifWidth();
    Integer height = facts.exifHeight();
    if (width == null || height == null || width == 0 || height == 0) {
      return;
    }
    if (width != frame.size().width() || height != frame.size().height()) {
      warnings.add(
          "Exif says "
              + width
              + " x "
              + height
              + " samples, the picture has "
              + frame.size().width()
              + " x "
              + frame.size().height());
    }
  }
}
