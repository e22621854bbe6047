package org.vestibule.samples;

import static org.vestibule.samples.Noise.bell;
import static org.vestibule.samples.Noise.step;

import org.vestibule.samples.Mouth.Mark;
import org.vestibule.samples.Relief.Spot;

/**
 * One tooth seen from the chewing side. In its own frame u runs along the arch away from the
 * midline and v outwards, both as parts of half the crown's size (-1 to 1).
 */
final class OcclusalTooth implements Relief.Surface {

  private final Arch.Place place;
  private final Mouth mouth;
  private final Noise noise;
  private final double soft;
  private final int number;
  private final boolean upper;

  OcclusalTooth(Arch.Place place, Mouth mouth, boolean upper, double sampleMm) {
    this.place = place;
    this.mouth = mouth;
    this.upper = upper;
    soft = sampleMm * 2.2 / place.crown().width();
    noise = new Noise(mouth.seed() * 100 + place.tooth());
    number = kind(place.tooth(), mouth.milk());
  }

  /** 1 and 2 cut, 3 tears, 4 and 5 have two cusps, 6 and 7 four; milk 4 and 5 grind as 6. */
  private static int kind(int tooth, boolean milk) {
    int number = tooth % 10;
    return milk && number >= 4 ? 6 : number;
  }

  @Override
  public void at(double x, double y, Spot spot) {
    double dx = x - place.x();
    double dy = y - place.y();
    double u = (dx * place.alongX() + dy * place.alongY()) / (place.crown().width() / 2);
    double v = (dx * place.outX() + dy * place.outY()) / (place.crown().depth() / 2);
    double narrow = 1 + taper() * v;
    double power = number >= 6 ? 3.4 : number >= 4 ? 2.5 : 2.6;
    double wobble = 1 + 0.03 * noise.at(u * 1.5 + 9, v * 1.5);
    double q =
        Math.pow(Math.pow(Math.abs(u / narrow), power) + Math.pow(Math.abs(v), power), 1 / power)
            * wobble;
    if (q >= 1 + soft || chipped(u, v)) {
      return;
    }
    spot.cover = step(1 + soft, 1 - soft, q);
    spot.gloss = 0.5;
    spot.colour(mouth.shade());
    spot.height = 2.2 + 3.6 * Math.sqrt(Math.max(0, 1 - Math.pow(Math.min(1, q), 4))) + form(u, v);
    spot.tint(0xc9ac7c, 0.6 * step(0.65, 1.04, q));
    double groove = groove(u, v);
    spot.height -= 0.3 * groove;
    spot.tint(0x8a6a44, 0.42 * groove);
    spot.tint(0xffffff, 0.10 + 0.12 * noise.rough(u * 2, v * 2));
    marks(u, v, q, spot);
  }

  private double taper() {
    return number <= 2 ? 0.3 : number == 3 ? 0.18 : upper ? 0.06 : -0.05;
  }

  private boolean chipped(double u, double v) {
    return mouth.has(place.tooth(), Mark.FRACTURED)
        && 0.9 * v - u > 0.85 + 0.06 * noise.at(u * 6, v * 6);
  }

  private double form(double u, double v) {
    if (number <= 2) {
      return 1.2 * bell(v - 0.42, 0.36)
          - 0.8 * bell(v + 0.1, 0.4) * bell(u, 0.7)
          + 0.7 * bell(v + 0.6, 0.4) * bell(u, 0.5);
    }
    if (number == 3) {
      return 1.9 * bell(Math.hypot(u * 0.8, v - 0.15), 0.42) + 0.7 * bell(v + 0.55, 0.3);
    }
    if (number <= 5) {
      return 1.5 * bell(Math.hypot(u, v - 0.52), 0.5)
          + 1.2 * bell(Math.hypot(u, v + 0.5), 0.45)
          - 0.9 * bell(v, 0.2) * bell(u, 0.8);
    }
    return 1.25 * bell(Math.hypot(u + 0.46, v - 0.5), 0.42)
        + 1.15 * bell(Math.hypot(u - 0.48, v - 0.5), 0.4)
        + 1.35 * bell(Math.hypot(u + 0.42, v + 0.48), 0.46)
        + 0.8 * bell(Math.hypot(u - 0.52, v + 0.52), 0.36)
        - 1.2 * bell(Math.hypot(u, v), 0.3);
  }

  private double groove(double u, double v) {
    double bend = 0.06 * noise.at(u * 4, 3);
    if (number <= 3) {
      return 0;
    }
    if (number <= 5) {
      return bell(v + bend, 0.09) * step(0.72, 0.5, Math.abs(u));
    }
    double along = bell(v + bend + 0.06 * u, 0.075) * step(0.74, 0.55, Math.abs(u));
    double out = bell(u - 0.02 + bend, 0.07) * step(-0.02, 0.1, v) * step(0.95, 0.7, v);
    double in = bell(u - 0.1 - bend, 0.07) * step(0.02, -0.1, v) * step(-0.95, -0.7, v);
    return Math.min(1, along + out + in);
  }

  private void marks(double u, double v, double q, Spot spot) {
    int tooth = place.tooth();
    double patch = patch(u, v, q);
    if (mouth.has(tooth, Mark.GOLD_ONLAY)) {
      double gold = step(0.9, 0.84, q + 0.05 * noise.at(u * 2, v * 2));
      spot.tint(0xd9a32b, 0.97 * gold);
      spot.gloss = Noise.mix(spot.gloss, 1.3, gold);
    } else if (mouth.has(tooth, Mark.GREY_FILLING)) {
      spot.tint(0x6d7278, 0.95 * patch);
      spot.gloss = Noise.mix(spot.gloss, 0.8, patch);
    } else if (mouth.has(tooth, Mark.WHITE_FILLING)) {
      spot.tint(0xfffaf0, 0.85 * patch);
    } else if (mouth.has(tooth, Mark.CARIES)) {
      spot.tint(0x2f1c10, 0.93 * patch);
      spot.tint(0x7a5230, 0.5 * bell(patch - 0.4, 0.35));
      spot.height -= 1.6 * patch;
      spot.gloss *= 1 - patch;
    }
    if (mouth.has(tooth, Mark.DISCOLOURED)) {
      spot.tint(0x8f7f72, 0.72);
    }
  }

  /** Where a filling or a hole lies: along the grooves, wide, a bit to the far side. */
  private double patch(double u, double v, double q) {
    double edge = 0.1 * noise.at(u * 3 + 5, v * 3);
    double slot = Math.pow(Math.abs(u / 0.74), 3) + Math.pow(Math.abs((v + 0.05) / 0.34), 3);
    double middle = step(1.1, 0.9, slot + edge);
    double box = step(0.5, 0.44, Math.hypot(u - 0.45, v * 1.1) + edge);
    return Math.max(middle, box) * step(0.98, 0.9, q);
  }
}
