package org.vestibule.flow;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome.Done;
import org.vestibule.dental.Occupant;
import org.vestibule.dental.Stage;
import org.vestibule.dental.Tooth;
import org.vestibule.dental.ToothPosition;

/** Takes an object's comment apart into what the encoder put together (see CommentPart). */
final class ObjectComment {

  private static final Pattern PART =
      Pattern.compile("^NOT THE WHOLE PHOTOGRAPH: its file is damaged, this is (.+?)\\. View: ");
  private static final Pattern STAGE = Pattern.compile(" Stage: ([a-z-]+)\\.");
  private static final Pattern TREATMENT =
      Pattern.compile(
          " Treatment: (.+?)\\.(?= At the position: | Edges that could | Note: |$)",
          Pattern.DOTALL);
  private static final Pattern POSITION =
      Pattern.compile(" At the position: ([a-z]+) at [^()]*\\((\\d\\d)\\)\\.");
  private static final Pattern EDGES =
      Pattern.compile(
          " Edges that could not be turned without re-encoding were dropped: (\\d+) columns,"
              + " (\\d+) rows\\.");
  private static final Pattern NOTE = Pattern.compile(" Note: (.*)$", Pattern.DOTALL);

  private final String text;
  private final String said;

  /**
   * @param text the whole comment
   */
  ObjectComment(String text) {
    this.text = text;
    Matcher note = NOTE.matcher(text);
    this.said = note.find() ? text.substring(0, note.start()) : text;
  }

  /** Which rows of the photograph there are; empty if all. */
  String part() {
    return first(PART, text);
  }

  @Nullable Stage stage() {
    return Stage.find(first(STAGE, said)) instanceof Done<Stage> stage ? stage.value() : null;
  }

  String treatment() {
    return first(TREATMENT, said);
  }

  String note() {
    return first(NOTE, text);
  }

  /** What is no tooth, where it stands. */
  List<ToothPosition> positions() {
    List<ToothPosition> positions = new ArrayList<>();
    Matcher position = POSITION.matcher(said);
    while (position.find()) {
      Optional<Occupant> occupant = occupant(position.group(1));
      if (occupant.isPresent()
          && Tooth.ofIso(Integer.parseInt(position.group(2))) instanceof Done<Tooth> tooth) {
        positions.add(new ToothPosition(tooth.value(), occupant.get()));
      }
    }
    return positions;
  }

  private static Optional<Occupant> occupant(String word) {
    for (Occupant occupant : Occupant.values()) {
      if (occupant.words().equals(word)) {
        return Optional.of(occupant);
      }
    }
    return Optional.empty();
  }

  int trimmedColumns() {
    return trimmed(1);
  }

  int trimmedRows() {
    return trimmed(2);
  }

  private int trimmed(int which) {
    Matcher edges = EDGES.matcher(said);
    return edges.find() ? Integer.parseInt(edges.group(which)) : 0;
  }

  /** The comment without what was dropped at the edges when the file was turned. */
  static String withoutEdges(String text) {
    return EDGES.matcher(text).replaceFirst("");
  }

  private static String first(Pattern pattern, String in) {
    Matcher found = pattern.matcher(in);
    return found.find() ? found.group(1) : "";
  }
}
