package org.vestibule.simulator.sorter;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import javax.imageio.ImageIO;
import org.vestibule.assign.Seen;
import org.vestibule.base.ContentHash;
import org.vestibule.intake.Arrival;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.FileNames;
import org.vestibule.intake.Photo;
import org.vestibule.jpeg.JpegStructure;
import org.vestibule.simulator.SeenPhoto;

/** Gives simulated files the shape in which the intake hands them on. */
final class SimulatedPhotos {

  private static final JpegStructure STRUCTURE = JpegStructure.read(picture()).orThrow();

  private SimulatedPhotos() {}

  static ContentHash hash(SeenPhoto seen) {
    return ContentHash.of(seen.content().getBytes(StandardCharsets.UTF_8));
  }

  /** What photographs have in common that earlier runs are asked for: a day, or a folder. */
  static String day(String name, CaptureFacts facts) {
    LocalDateTime taken = facts.takenAt();
    return taken == null
        ? "none in " + FileNames.key(FileNames.folder(name))
        : taken.toLocalDate().toString();
  }

  static Photo photo(SeenPhoto seen) {
    Arrival arrival = new Arrival(Path.of(seen.key()), seen.key(), 10, seen.fileTime(), hash(seen));
    return new Photo(arrival, facts(seen), STRUCTURE, List.of(), List.of());
  }

  static Seen seen(SeenPhoto photo, String filedVisit) {
    return new Seen(photo.key(), hash(photo), facts(photo), photo.sighting(), filedVisit);
  }

  private static CaptureFacts facts(SeenPhoto seen) {
    return CaptureFacts.builder()
        .takenAt(seen.takenAt())
        .offset(seen.offset())
        .subsecond(seen.subsecond())
        .make(seen.make())
        .model(seen.model())
        .lens(seen.lens())
        .orientation(1)
        .editingTraces(seen.edited() ? List.of("a program changed it") : List.of())
        .build();
  }

  private static byte[] picture() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      ImageIO.write(new BufferedImage(16, 16, BufferedImage.TYPE_INT_RGB), "jpg", out);
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory failed", e);
    }
    return out.toByteArray();
  }
}
