package org.vestibule.dental;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** What each series wants; the table is a resource. */
public final class SeriesCatalogue {

  private static final Map<Series, List<SeriesSlot>> SLOTS = read();

  private SeriesCatalogue() {}

  /** The photographs that a series wants, the more particular first. */
  public static List<SeriesSlot> slots(Series series) {
    return SLOTS.getOrDefault(series, List.of());
  }

  private static Map<Series, List<SeriesSlot>> read() {
    Map<Series, List<SeriesSlot>> slots = new EnumMap<>(Series.class);
    for (CsvTable.Row row : CsvTable.ofResource("series.csv").rows()) {
      String stage = row.get("stage");
      slots
          .computeIfAbsent(Series.find(row.get("series")).orThrow(), series -> new ArrayList<>())
          .add(
              new SeriesSlot(
                  row.get("slot"),
                  row.list("views"),
                  stage.isEmpty() ? null : Stage.find(stage).orThrow(),
                  row.get("accessory")));
    }
    slots.replaceAll((series, wanted) -> List.copyOf(wanted));
    return slots;
  }
}
