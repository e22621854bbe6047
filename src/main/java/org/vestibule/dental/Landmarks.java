package org.vestibule.dental;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/**
 * What is known of where things lie in the raw picture: the incisors (the front of the arch) or the
 * patient's up.
 */
record Landmarks(List<Landmark> all, List<String> because) {

  /** A direction in the patient that lies at an edge of the raw picture. */
  record Landmark(Direction direction, Edge rawEdge) {}

  static Outcome<Landmarks> of(View view, Capture capture) {
    return view.occlusal() ? ofOcclusal(view, capture) : ofLevel(view, capture);
  }

  /** True if a raw picture of this orientation has every landmark where it was seen. */
  boolean fit(PatientOrientation raw) {
    return all.stream()
        .allMatch(
            landmark ->
                raw.edgeOf(landmark.direction()).filter(landmark.rawEdge()::equals).isPresent());
  }

  private static Outcome<Landmarks> ofOcclusal(View view, Capture capture) {
    Incisors incisors = capture.incisors();
    if (incisors == null) {
      return Outcome.refused(
          "nobody said where the incisors lie in this "
              + view.name()
              + "; the phone points up or down here, where Exif rotation can't be trusted",
          "state the edge of the raw picture at which the incisors lie: top, bottom, left or right");
    }
    if (capture.up() != null) {
      return Outcome.refused(
          "a top edge is stated for this " + view.name() + ", which has no up in the patient",
          "state where the incisors lie instead");
    }
    return Outcome.done(new Landmarks(List.of(front(incisors)), List.of(incisorsSaid(incisors))));
  }

  private static Outcome<Landmarks> ofLevel(View view, Capture capture) {
    List<Landmark> all = new ArrayList<>();
    List<String> because = new ArrayList<>();
    Edge up = upEdge(capture, because);
    if (up != null) {
      all.add(new Landmark(Direction.HEAD, up));
    }
    Incisors incisors = capture.incisors();
    if (incisors != null && view.shownAs().edgeOf(Direction.ANTERIOR).isPresent()) {
      all.add(front(incisors));
      because.add(incisorsSaid(incisors));
    } else if (incisors != null) {
      because.add("where the incisors lie says nothing in this view and was not used");
    }
    return all.isEmpty()
        ? Outcome.refused(
            "the file has no Exif Orientation that says which way is up in this " + view.name(),
            "state on the preview which edge of the raw picture is the top")
        : Outcome.done(new Landmarks(List.copyOf(all), List.copyOf(because)));
  }

  private static @Nullable Edge upEdge(Capture capture, List<String> because) {
    Edge stated = capture.up();
    if (stated != null) {
      because.add("stated: the raw picture's " + words(stated.name()) + " edge is the top");
      return stated;
    }
    Integer exif = capture.exifOrientation();
    if (exif == null || exif < 1 || exif > 8) {
      return null;
    }
    Edge up = Edge.TOP.inRaw(Turn.ofExif(exif));
    because.add(
        "Exif Orientation " + exif + ": the raw picture's " + words(up.name()) + " edge is up");
    return up;
  }

  private static Landmark front(Incisors incisors) {
    return new Landmark(Direction.ANTERIOR, Edge.valueOf(incisors.name()));
  }

  private static String incisorsSaid(Incisors incisors) {
    return "stated: incisors at the raw picture's " + words(incisors.name()) + " edge";
  }

  private static String words(String edge) {
    return edge.toLowerCase(Locale.ROOT);
  }
}
