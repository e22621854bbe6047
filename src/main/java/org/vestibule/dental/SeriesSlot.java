package org.vestibule.dental;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One photograph that a series wants.
 *
 * @param name for people
 * @param views keys of the views of which one fills it; none if any view does
 * @param stage it must show; null if any
 * @param accessory key of one that must be visible; empty if none
 */
public record SeriesSlot(String name, List<String> views, @Nullable Stage stage, String accessory) {

  public SeriesSlot {
    views = List.copyOf(views);
  }

  /** True if a photograph fills it. */
  public boolean isFilledBy(View view, @Nullable Stage shown, List<Accessory> accessories) {
    return (views.isEmpty() || views.contains(view.key()))
        && (stage == null || stage == shown)
        && (accessory.isEmpty()
            || accessories.stream().anyMatch(each -> each.key().equals(accessory)));
  }
}
