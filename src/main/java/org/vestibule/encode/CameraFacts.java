package org.vestibule.encode;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.vestibule.base.ResourceTable;

/**
 * The allow-list of camera facts, with a reason for each line. A fact that is not on it, or is
 * marked as not kept, cannot enter an object.
 */
public final class CameraFacts {

  private static final String RESOURCE = "camera-facts.csv";
  private static final int COLUMNS = 6;

  /**
   * One line of the list.
   *
   * @param fact what it is, in words
   * @param exif where the camera writes it
   * @param keyword the DICOM attribute it would become; empty if the standard has none
   * @param kept whether it may enter an object
   * @param basicProfile its action in the Basic Profile (PS3.15 Table E.1-1)
   * @param reason why it is kept or not
   */
  public record Line(
      String fact, String exif, String keyword, boolean kept, String basicProfile, String reason) {}

  private final List<Line> lines;
  private final Set<String> kept;

  private CameraFacts(List<Line> lines) {
    this.lines = List.copyOf(lines);
    this.kept =
        lines.stream()
            .filter(Line::kept)
            .map(Line::keyword)
            .collect(Collectors.toUnmodifiableSet());
  }

  /** The list that belongs to this recipe. */
  public static CameraFacts standard() {
    return new CameraFacts(
        ResourceTable.lines(CameraFacts.class, RESOURCE).stream().map(CameraFacts::line).toList());
  }

  private static Line line(String row) {
    String[] cells = row.split(",", -1);
    if (cells.length != COLUMNS) {
      throw new IllegalStateException(
          RESOURCE + " has a line of " + cells.length + " cells instead of " + COLUMNS);
    }
    return new Line(cells[0], cells[1], cells[2], cells[3].equals("yes"), cells[4], cells[5]);
  }

  public List<Line> lines() {
    return lines;
  }

  /** True if the attribute of this keyword may be filled from the camera. */
  public boolean mayEnter(String keyword) {
    return kept.contains(keyword);
  }
}
