package org.vestibule.flow.look;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.vestibule.intake.Photo;

/**
 * Photographs that one camera took without a long pause: a hint for people which belong together,
 * never a statement about whose they are.
 *
 * @param camera the camera, or null if the files don't name it
 * @param photos in order of time; those of a group without times in order of names
 */
record Sitting(@Nullable String camera, List<Photo> photos) {

  private static final Comparator<Photo> BY_TIME =
      Comparator.comparing(
              (Photo photo) -> photo.facts().takenAt(),
              Comparator.nullsLast(Comparator.naturalOrder()))
          .thenComparing(photo -> photo.arrival().name());

  Sitting {
    photos = List.copyOf(photos);
  }

  @Nullable LocalDateTime start() {
    return photos.get(0).facts().takenAt();
  }

  @Nullable LocalDateTime end() {
    return photos.get(photos.size() - 1).facts().takenAt();
  }

  /** Sittings in order of their start; photographs without a time come last, in one group. */
  static List<Sitting> of(List<Photo> photos, Duration gap) {
    Map<String, List<Photo>> byCamera = new LinkedHashMap<>();
    List<Photo> timeless = new ArrayList<>();
    for (Photo photo : photos.stream().sorted(BY_TIME).toList()) {
      if (photo.facts().takenAt() == null) {
        timeless.add(photo);
      } else {
        String camera = photo.facts().camera();
        byCamera.computeIfAbsent(camera == null ? "" : camera, key -> new ArrayList<>()).add(photo);
      }
    }
    List<Sitting> sittings = new ArrayList<>();
    byCamera.values().forEach(taken -> split(taken, gap, sittings));
    sittings.sort(Comparator.comparing(sitting -> sitting.photos().get(0), BY_TIME));
    if (!timeless.isEmpty()) {
      sittings.add(new Sitting(null, timeless));
    }
    return sittings;
  }

  private static void split(List<Photo> taken, Duration gap, List<Sitting> sittings) {
    List<Photo> open = new ArrayList<>();
    LocalDateTime last = null;
    for (Photo photo : taken) {
      LocalDateTime time = photo.facts().takenAt();
      if (last != null && time != null && Duration.between(last, time).compareTo(gap) > 0) {
        sittings.add(new Sitting(open.get(0).facts().camera(), open));
        open = new ArrayList<>();
      }
      open.add(photo);
      last = time;
    }
    sittings.add(new Sitting(open.get(0).facts().camera(), open));
  }
}
