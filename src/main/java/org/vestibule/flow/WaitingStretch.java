package org.vestibule.flow;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.PhotoFact;
import org.vestibule.flow.look.LookRules;

/**
 * Waiting photographs that one camera took without a long pause: a hint which belong together,
 * never a statement about whose they are. Where lists or cards name different visits for two
 * neighbours, they are in two stretches.
 *
 * @param camera empty if the files don't name it
 * @param photos in the order in which they were taken; those without a time by their names
 */
public record WaitingStretch(String camera, List<WaitingPhoto> photos) {

  private static final Comparator<WaitingPhoto> IN_SHOT_ORDER =
      Comparator.comparing(
              WaitingPhoto::takenAt, Comparator.nullsLast(Comparator.<LocalDateTime>naturalOrder()))
          .thenComparing(WaitingPhoto::name)
          .thenComparing(photo -> photo.hash().hex());

  public WaitingStretch {
    photos = List.copyOf(photos);
  }

  public @Nullable LocalDateTime start() {
    return photos.get(0).takenAt();
  }

  public @Nullable LocalDateTime end() {
    return photos.get(photos.size() - 1).takenAt();
  }

  /** All that waits, the earliest stretch first, photographs without a time in the last one. */
  public static List<WaitingStretch> all(Practice practice) {
    SourceFiles sources = new SourceFiles(practice);
    Map<String, List<WaitingPhoto>> byCamera = new LinkedHashMap<>();
    List<WaitingPhoto> timeless = new ArrayList<>();
    for (WaitingPhoto photo :
        new WaitingPhotos(practice).all().stream().sorted(IN_SHOT_ORDER).toList()) {
      String camera = sources.facts(photo.hash()).camera();
      List<WaitingPhoto> with =
          byCamera.computeIfAbsent(camera == null ? "" : camera, any -> new ArrayList<>());
      (photo.takenAt() == null ? timeless : with).add(photo);
    }
    List<WaitingStretch> stretches = new ArrayList<>();
    byCamera.forEach((camera, taken) -> split(camera, taken, stretches));
    stretches.sort(Comparator.comparing(stretch -> stretch.photos().get(0), IN_SHOT_ORDER));
    if (!timeless.isEmpty()) {
      stretches.add(new WaitingStretch("", timeless));
    }
    return stretches;
  }

  private static void split(
      String camera, List<WaitingPhoto> taken, List<WaitingStretch> stretches) {
    List<WaitingPhoto> open = new ArrayList<>();
    for (WaitingPhoto photo : taken) {
      if (!open.isEmpty() && !together(open, photo)) {
        stretches.add(new WaitingStretch(camera, open));
        open = new ArrayList<>();
      }
      open.add(photo);
    }
    if (!open.isEmpty()) {
      stretches.add(new WaitingStretch(camera, open));
    }
  }

  private static boolean together(List<WaitingPhoto> open, WaitingPhoto next) {
    LocalDateTime last = open.get(open.size() - 1).takenAt();
    LocalDateTime taken = next.takenAt();
    boolean soon =
        last != null && taken != null && !taken.isAfter(last.plus(LookRules.DEFAULT.sittingGap()));
    String visit = visit(next);
    return soon
        && (visit.isEmpty()
            || open.stream()
                .map(WaitingStretch::visit)
                .allMatch(other -> other.isEmpty() || other.equalsIgnoreCase(visit)));
  }

  private static String visit(WaitingPhoto photo) {
    return photo.proposal().getOrDefault(PhotoFact.VISIT.word(), "");
  }
}
