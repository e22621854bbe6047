package org.vestibule.samples;

import java.util.ArrayList;
import java.util.List;

/**
 * Where the teeth of one arch stand, seen from the chewing side: x to the patient's left, y
 * backwards, the midline of the front teeth at the origin. The curve is half an ellipse that goes
 * on straight.
 */
final class Arch {

  /**
   * A tooth in its place.
   *
   * @param alongX right part of the unit vector along the arch away from the midline
   * @param alongY its backward part
   */
  record Place(int tooth, Crown crown, double x, double y, double alongX, double alongY) {
    /** Outwards, to lips and cheek: along turned by a quarter, away from the middle. */
    double outX() {
      return Mouth.onLeft(tooth) ? alongY : -alongY;
    }

    double outY() {
      return Mouth.onLeft(tooth) ? -alongX : alongX;
    }
  }

  final double halfWidth;
  final double depth;
  final double end;
  private final List<Place> places = new ArrayList<>();

  Arch(Mouth mouth, boolean upper) {
    double size = mouth.milk() ? 0.74 : 1;
    halfWidth = (upper ? 26.5 : 24.5) * size;
    depth = (upper ? 41 : 38) * (mouth.milk() ? 0.6 : 1);
    double last = 0;
    for (boolean left : new boolean[] {false, true}) {
      double arc = 0;
      List<Integer> half =
          mouth.arch(upper).stream().filter(t -> Mouth.onLeft(t) == left).sorted().toList();
      for (int tooth : half) {
        Crown crown = Crown.of(tooth);
        places.add(place(tooth, crown, arc + crown.width() / 2, mouth));
        arc += crown.width() * 0.985;
      }
      last = places.get(places.size() - 1).y();
    }
    end = last;
  }

  List<Place> places() {
    return List.copyOf(places);
  }

  Place place(int tooth) {
    return places.stream().filter(p -> p.tooth() == tooth).findFirst().orElseThrow();
  }

  private Place place(int tooth, Crown crown, double arc, Mouth mouth) {
    double walked = 0;
    double angle = 0;
    double step = 0.002;
    while (walked < arc && angle < Math.PI / 2) {
      walked += step * Math.hypot(halfWidth * Math.cos(angle), depth * Math.sin(angle));
      angle += step;
    }
    double x = halfWidth * Math.sin(angle);
    double y = depth * (1 - Math.cos(angle)) + Math.max(0, arc - walked);
    double length = Math.hypot(halfWidth * Math.cos(angle), depth * Math.sin(angle));
    double alongX = halfWidth * Math.cos(angle) / length;
    double alongY = depth * Math.sin(angle) / length;
    if (mouth.has(tooth, Mouth.Mark.CROWDED)) {
      return crowded(tooth, crown, x, y, alongX, alongY);
    }
    double side = Mouth.onLeft(tooth) ? 1 : -1;
    return new Place(tooth, crown, side * x, y, side * alongX, alongY);
  }

  /** Turned by some 45 degrees and pushed out of the row. */
  private static Place crowded(
      int tooth, Crown crown, double x, double y, double alongX, double alongY) {
    double cos = 0.72;
    double sin = 0.69;
    double turnedX = alongX * cos - alongY * sin;
    double turnedY = alongX * sin + alongY * cos;
    double side = Mouth.onLeft(tooth) ? 1 : -1;
    double pushedX = x + alongY * 3.0;
    double pushedY = y - alongX * 3.0;
    return new Place(tooth, crown, side * pushedX, pushedY, side * turnedX, turnedY);
  }

  /** How far outside the curve a place lies, in millimetres; negative inside. */
  double outside(double x, double y) {
    double norm =
        y > depth ? Math.abs(x) / halfWidth : Math.hypot(x / halfWidth, (y - depth) / depth);
    return (norm - 1) * Math.min(halfWidth, depth) * (0.75 + 0.25 * norm);
  }
}
