package org.vestibule.samples;

import static org.vestibule.samples.Noise.bell;
import static org.vestibule.samples.Noise.step;

import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.vestibule.samples.FrontTooth.Seen;
import org.vestibule.samples.Mouth.Mark;

/**
 * Teeth from the front, from a side, or from inside, as true hand shows them: the arches stand on
 * their curve, and the camera goes round it.
 */
final class FrontArt {

  private final Mouth mouth;
  private final double angle;
  private final boolean inside;
  private final boolean bothArches;
  private final boolean blackBehind;
  private final double focusX;
  private final Noise noise;

  private FrontArt(
      Mouth mouth, double degrees, double focusX, boolean both, boolean inside, boolean black) {
    this.mouth = mouth;
    angle = Math.toRadians(degrees);
    this.focusX = focusX;
    bothArches = both;
    this.inside = inside;
    blackBehind = black;
    noise = new Noise(mouth.seed() + 7);
  }

  /** Both arches, teeth together. */
  static FrontArt frontal(Mouth mouth) {
    return new FrontArt(mouth, 0, 0, true, false, false);
  }

  /** The patient's right side: front teeth to the viewer's right. */
  static FrontArt rightBuccal(Mouth mouth) {
    return new FrontArt(mouth, -58, -1, true, false, false);
  }

  /** The patient's left side: front teeth to the viewer's left. */
  static FrontArt leftBuccal(Mouth mouth) {
    return new FrontArt(mouth, 58, 1, true, false, false);
  }

  /** The upper front teeth against a black contraster. */
  static FrontArt upperAnterior(Mouth mouth) {
    return new FrontArt(mouth, 0, 0, false, false, true);
  }

  /** The upper front teeth from inside: the patient's right to the viewer's right. */
  static FrontArt upperPalatal(Mouth mouth) {
    return new FrontArt(mouth, 180, 0, false, true, false);
  }

  /** The picture, this many millimetres tall. */
  BufferedImage draw(int width, int height, double tallMm) {
    double scale = height / tallMm;
    double centreX = focusX * (mouth.milk() ? 14 : 21);
    double centreY = bothArches ? 0.6 : -5.5;
    Relief relief =
        new Relief(width, height, scale, centreX - width / scale / 2, centreY - tallMm / 2);
    relief.layAll(this::ground);
    if (bothArches) {
      paint(relief, false);
    }
    paint(relief, true);
    double wide = width / scale;
    if (!blackBehind) {
      relief.layAll(new Lips(centreX, centreY, wide / 2, tallMm / 2, focusX != 0, noise));
    }
    return relief.lit();
  }

  private void paint(Relief relief, boolean upper) {
    for (Seen seen : seen(upper)) {
      FrontTooth tooth = new FrontTooth(seen, mouth, inside, relief.sampleMm());
      double radius = Math.max(seen.halfWidth(), Math.abs(seen.edgeY() - seen.gumY())) * 1.25;
      relief.lay(seen.x(), (seen.gumY() + seen.edgeY()) / 2, radius, tooth);
    }
  }

  /** The teeth that face the camera, the far ones first. */
  private List<Seen> seen(boolean upper) {
    Arch arch = new Arch(mouth, upper);
    double rightX = Math.cos(angle);
    double rightY = Math.sin(angle);
    double nearest =
        arch.places().stream()
            .mapToDouble(p -> deep(p))
            .reduce(inside ? Math::max : Math::min)
            .orElseThrow();
    List<Seen> result = new ArrayList<>();
    for (Arch.Place place : arch.places()) {
      double facing = -(-rightY * place.outX() + rightX * place.outY()) * (inside ? -1 : 1);
      double wide = Math.abs(place.alongX() * rightX + place.alongY() * rightY);
      boolean crowded = mouth.has(place.tooth(), Mark.CROWDED);
      if (mouth.has(place.tooth(), Mark.MISSING) || (!crowded && facing < 0.08 && wide < 0.45)) {
        continue;
      }
      double away = place.alongX() * rightX + place.alongY() * rightY;
      result.add(
          appear(
              place,
              upper,
              deep(place) - nearest,
              Math.max(crowded ? 0.8 : 0.28, wide),
              away < 0 ? -1 : 1));
    }
    result.sort(Comparator.comparingDouble(Seen::far).reversed());
    return result;
  }

  private double deep(Arch.Place place) {
    return -Math.sin(angle) * place.x() + Math.cos(angle) * place.y();
  }

  private Seen appear(Arch.Place place, boolean upper, double deep, double wide, int away) {
    double shrink = 1 / (1 + Math.abs(deep) * 0.006);
    double x = (place.x() * Math.cos(angle) + place.y() * Math.sin(angle)) * shrink;
    double half = place.crown().width() / 2 * wide * shrink * 1.03;
    double length = place.crown().length();
    boolean crowded = mouth.has(place.tooth(), Mark.CROWDED);
    double edge = upper ? 1.4 : 1.1 + (bothArches ? -1.2 : 0);
    if (place.tooth() % 10 == 2) {
      edge -= upper ? 0.7 : 0;
    }
    edge = edge * shrink - (crowded ? 1.6 : 0);
    double gum = upper ? edge - length * shrink : edge + length * shrink;
    double far = Math.min(0.85, Math.max(0, Math.abs(deep) - 3) / 38.0) - (crowded ? 0.05 : 0);
    return new Seen(place.tooth(), x, half, gum, edge, away, Math.max(0, far));
  }

  /** Gum above and below, the dark of the mouth between. */
  private void ground(double x, double y, Relief.Spot spot) {
    spot.cover = 1;
    double small = mouth.milk() ? 0.62 : 1;
    double scallop = 0.5 * noise.at(x / 3, 2);
    double upperGum = step(-3.1 * small + scallop, -3.9 * small + scallop, y);
    double lowerGum = bothArches ? step(4.0 * small + scallop, 4.8 * small + scallop, y) : 0;
    double gum = Math.max(upperGum, lowerGum);
    double above = Math.max(0, (y < 0 ? -y - 9.5 * small : y - 9.2 * small));
    spot.colour(blackBehind ? 0x0b0b0d : 0x1f0d0f);
    spot.height = -3.5;
    spot.gloss = blackBehind ? 0.05 : 0.1;
    if (gum > 0) {
      double grain = noise.rough(x * 1.5, y * 1.5);
      spot.tint(0xe0948e, gum);
      spot.tint(0xc46a68, gum * (0.3 + 0.25 * grain));
      spot.tint(0xb04b4c, gum * 0.75 * step(2.5, 5.5, above + 0.8 * noise.at(x / 4, 9)));
      double vessel = bell(noise.at(x / 2.2 + 40, y / 5), 0.06) * step(3, 6, above);
      spot.tint(0x8d2b33, 0.35 * vessel * gum);
      double bulge = 1.1 * bell(above - 0.6, 3.2) - 0.06 * above;
      double columns = 0.35 * Math.cos(x * 0.8 / small + noise.at(x / 9, 1)) * bell(above, 6);
      spot.height =
          Noise.mix(
              -3.5,
              0.4 + bulge + columns + 0.03 * grain + 0.04 * noise.at(x * 4, y * 4) * 0.3,
              gum);
      spot.gloss = 0.24 * gum;
    }
    if (inside && y < -7) {
      double fold = Math.max(0, Math.sin(y * 1.5 + 0.35 * Math.abs(x) + noise.at(x / 5, y / 5)));
      spot.height += 0.7 * fold * step(-9.5, -11.5, y) * step(0.8, 2.5, Math.abs(x));
      spot.height += 1.4 * bell(Math.hypot(x * 1.5, y + 12.5), 2.2);
    }
  }
}
