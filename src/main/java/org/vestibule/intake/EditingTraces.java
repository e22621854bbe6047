package org.vestibule.intake;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import org.vestibule.jpeg.Embedded;
import org.vestibule.jpeg.FrameSize;

/**
 * Hints that a program changed the picture after the capture. Each is only a hint, and none is no
 * proof of an untouched picture: programs can leave no trace (common practice, no source).
 */
final class EditingTraces {

  /** Phones finish writing a picture some seconds after the capture. */
  private static final Duration WRITING = Duration.ofSeconds(60);

  private final Segments segments;
  private final ExifTags tags;
  private final CaptureFacts facts;
  private final List<String> traces = new ArrayList<>();

  EditingTraces(Segments segments, ExifTags tags, CaptureFacts facts) {
    this.segments = segments;
    this.tags = tags;
    this.facts = facts;
  }

  List<String> find() {
    missingExif();
    software();
    xmp();
    changedLater();
    otherSize();
    return traces;
  }

  private void missingExif() {
    if (segments.structure().has(Embedded.EXIF)) {
      return;
    }
    traces.add(
        segments.structure().progressive()
            ? "the camera's data is missing and the picture is coded progressively, as after a"
                + " messenger"
            : "the camera's data is missing: a messenger, a screenshot or a program wrote this file");
  }

  private void software() {
    if (tags.has(Tag.PROCESSING_SOFTWARE)
        || tags.has(Tag.IMAGE_EDITOR)
        || tags.has(Tag.RAW_SOFTWARE)
        || tags.has(Tag.EDITING_SOFTWARE)) {
      traces.add("Exif names a program that processed the picture");
    }
    if (tags.has(Tag.IMAGE_HISTORY)) {
      traces.add("Exif holds a history of changes");
    }
    if (segments.structure().has(Embedded.PHOTOSHOP)) {
      traces.add("an image editor left its own data (APP13)");
    }
  }

  private void xmp() {
    String xmp = segments.xmp();
    if (xmp.contains("xmpMM:History") || xmp.contains("stEvt:")) {
      traces.add("XMP holds a history of changes");
    }
    if (xmp.contains("photoshop:") || xmp.contains("crs:")) {
      traces.add("XMP holds settings of an image editor");
    }
  }

  private void changedLater() {
    String text = tags.text(Tag.MODIFY_DATE);
    LocalDateTime changed = text == null ? null : CaptureTime.parse(text);
    LocalDateTime taken = facts.takenAt();
    if (changed == null || taken == null) {
      return;
    }
    if (Duration.between(taken.withNano(0), changed).abs().compareTo(WRITING) > 0) {
      traces.add("it was changed at another time than it was taken");
    }
  }

  private void otherSize() {
    Integer width = facts.exifWidth();
    Integer height = facts.exifHeight();
    if (width == null || height == null || width <= 0 || height <= 0) {
      return;
    }
    FrameSize size = segments.structure().frame().size();
    if (width == size.height() && height == size.width() && width != size.width()) {
      traces.add("width and height changed places since the capture: it was turned");
    } else if (width != size.width() || height != size.height()) {
      traces.add("its size is not the one the camera wrote: it was cropped or scaled");
    }
  }
}
