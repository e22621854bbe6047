package org.vestibule.samples;

import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * One photograph of the roll, as the plan in {@code roll.csv} has it.
 *
 * @param width samples across as shown by a viewer that obeys Exif; height likewise
 * @param seen the patient's directions in the picture so shown
 * @param extras what else is wrong with the picture or hides in the file
 */
record Shot(
    String file,
    Scene scene,
    int width,
    int height,
    RawState.Axes seen,
    int exif,
    String camera,
    LocalDateTime taken,
    String subSeconds,
    @Nullable ZoneOffset offset,
    Sampling sampling,
    double quality,
    Set<String> extras) {

  Shot {
    extras = Set.copyOf(extras);
  }

  static Shot of(String line) {
    List<String> cells = List.of(line.split(",", -1));
    if (cells.size() != 13) {
      throw new IllegalArgumentException(
          "a line of roll.csv has 13 cells but this has " + cells.size() + ": " + line);
    }
    return new Shot(
        cells.get(0),
        Scene.valueOf(cells.get(1)),
        Integer.parseInt(cells.get(2)),
        Integer.parseInt(cells.get(3)),
        RawState.Axes.of(cells.get(4)),
        Integer.parseInt(cells.get(5)),
        cells.get(6),
        LocalDateTime.parse(cells.get(7)),
        cells.get(8),
        cells.get(9).isEmpty() ? null : ZoneOffset.of(cells.get(9)),
        Sampling.valueOf(cells.get(10)),
        Double.parseDouble(cells.get(11)),
        Set.of(cells.get(12).split(" ")));
  }

  boolean has(String extra) {
    return extras.contains(extra);
  }

  /** True if a mirror image reaches the viewer. */
  boolean mirrored() {
    return seen.looking() != scene.shownAs().looking();
  }
}
