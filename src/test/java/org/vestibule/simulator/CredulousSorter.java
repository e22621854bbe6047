package org.vestibule.simulator;

import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.card.Card;
import org.vestibule.card.CardSighting;
import org.vestibule.card.ViewCard;
import org.vestibule.card.VisitCard;

/**
 * Believes everything at once: the last card, the folder's name, the time. It is here to be wrong,
 * so that it shows which faults hurt someone who doesn't look twice.
 */
final class CredulousSorter implements RollSorter {

  @Override
  public Map<String, Sorted> sort(SeenDay day, Map<String, Sorted> before) {
    Map<String, Sorted> sorted = new HashMap<>();
    Map<String, SimulatedVisit> open = new HashMap<>();
    Map<String, ViewCard> views = new HashMap<>();
    for (SeenPhoto photo : inOrder(day)) {
      String device = photo.folder() + photo.model();
      if (photo.sighting() instanceof CardSighting.OneCard seen) {
        sorted.put(photo.key(), new Sorted.SetAside());
        note(day, seen.card(), device, open, views);
      } else if (photo.sighting() instanceof CardSighting.NoCard) {
        sorted.put(photo.key(), sorted(day, photo, open.get(device), views.get(device)));
      }
    }
    return sorted;
  }

  private static List<SeenPhoto> inOrder(SeenDay day) {
    return day.photos().stream()
        .sorted(
            Comparator.comparing(
                    SeenPhoto::takenAt, Comparator.nullsLast(Comparator.naturalOrder()))
                .thenComparing(SeenPhoto::key))
        .toList();
  }

  private static void note(
      SeenDay day,
      Card card,
      String device,
      Map<String, SimulatedVisit> open,
      Map<String, ViewCard> views) {
    if (card instanceof ViewCard view) {
      views.put(device, view);
    } else if (card instanceof VisitCard visitCard) {
      views.remove(device);
      open.remove(device);
      day.visits().stream()
          .filter(visit -> visit.token().equals(visitCard.token()))
          .forEach(visit -> open.put(device, visit));
    }
  }

  private static Sorted sorted(
      SeenDay day, SeenPhoto photo, @Nullable SimulatedVisit open, @Nullable ViewCard view) {
    Optional<SimulatedVisit> visit = Optional.ofNullable(open).or(() -> byTime(day, photo));
    Optional<SimulatedPatient> patient =
        byFolder(day, photo).or(() -> visit.map(SimulatedVisit::patient));
    if (patient.isEmpty()) {
      return new Sorted.Waits("nothing says whose it is");
    }
    String key =
        visit
            .filter(found -> found.patient().equals(patient.get()))
            .map(SimulatedVisit::key)
            .orElse(null);
    return view == null
        ? new Sorted.Filed(patient.get().id(), key, null, null, null)
        : new Sorted.Filed(patient.get().id(), key, view.view(), view.mirror(), view.incisors());
  }

  private static Optional<SimulatedPatient> byFolder(SeenDay day, SeenPhoto photo) {
    return day.patients().stream()
        .filter(
            patient -> patient.id().equals(photo.folder()) || patient.name().equals(photo.folder()))
        .findFirst();
  }

  private static Optional<SimulatedVisit> byTime(SeenDay day, SeenPhoto photo) {
    LocalDateTime at = photo.takenAt();
    return day.visits().stream()
        .filter(visit -> at != null && visit.start() != null && visit.end() != null)
        .filter(visit -> !visit.start().isAfter(at) && visit.end().isAfter(at))
        .findFirst();
  }
}
