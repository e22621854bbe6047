package org.vestibule.assign;

import java.util.ArrayList;
import java.util.List;
import org.vestibule.dental.Series;
import org.vestibule.dental.SeriesCatalogue;
import org.vestibule.dental.SeriesSlot;

/**
 * Whether a visit has the photographs of its series.
 *
 * @param series that the visit names
 * @param missing what the series wants and nobody took, in its own words
 * @param doubled views that were taken more than once of the same teeth at the same stage
 * @param extra views that the series does not want
 */
public record Completeness(
    Series series, List<String> missing, List<String> doubled, List<String> extra) {

  public Completeness {
    missing = List.copyOf(missing);
    doubled = List.copyOf(doubled);
    extra = List.copyOf(extra);
  }

  /**
   * Compares a visit's photographs with its series.
   *
   * @param taken those that are filed or decided, in any order
   */
  public static Completeness of(Series series, List<TakenView> taken) {
    List<SeriesSlot> free = new ArrayList<>(SeriesCatalogue.slots(series));
    List<TakenView> counted = new ArrayList<>();
    List<String> doubled = new ArrayList<>();
    List<String> extra = new ArrayList<>();
    for (TakenView photo : taken) {
      boolean known = counted.stream().anyMatch(photo::sameAs);
      counted.add(photo);
      SeriesSlot slot =
          free.stream()
              .filter(each -> each.isFilledBy(photo.view(), photo.stage(), photo.accessories()))
              .findFirst()
              .orElse(null);
      if (slot != null) {
        free.remove(slot);
      } else if (known) {
        doubled.add(photo.view().name());
      } else {
        extra.add(photo.view().name());
      }
    }
    return new Completeness(
        series,
        free.stream().map(SeriesSlot::name).toList(),
        doubled.stream().distinct().toList(),
        extra.stream().distinct().toList());
  }

  /** True if nothing is missing. */
  public boolean isComplete() {
    return missing.isEmpty();
  }

  /** For people, such as {@code series orthodontic: missing left buccal; twice: Frontal}. */
  public String words() {
    List<String> parts = new ArrayList<>();
    parts.add(missing.isEmpty() ? "nothing is missing" : "missing " + String.join(", ", missing));
    if (!doubled.isEmpty()) {
      parts.add("more than once: " + String.join(", ", doubled));
    }
    if (!extra.isEmpty()) {
      parts.add("besides: " + String.join(", ", extra));
    }
    return "series " + series.words() + ": " + String.join("; ", parts);
  }
}
