package org.vestibule.samples;

import static org.vestibule.samples.Noise.bell;
import static org.vestibule.samples.Noise.step;

import org.vestibule.samples.Mouth.Mark;
import org.vestibule.samples.Relief.Spot;

/**
 * One tooth seen from the front, the side or from inside. In its own frame u runs away from the
 * midline (-1 to 1) and s from the gum (0) to the edge (1).
 */
final class FrontTooth implements Relief.Surface {

  private final Seen seen;
  private final Mouth mouth;
  private final boolean inside;
  private final double soft;
  private final Noise noise;
  private final int number;

  /**
   * Where a tooth appears.
   *
   * @param gumY where its neck lies, edgeY where its edge lies
   * @param away 1 if "away from the midline" is to the right, -1 if to the left
   * @param far from 0 (near) to 1: how much darker for lying deep in the mouth
   */
  record Seen(
      int tooth, double x, double halfWidth, double gumY, double edgeY, int away, double far) {}

  FrontTooth(Seen seen, Mouth mouth, boolean inside, double sampleMm) {
    this.seen = seen;
    this.mouth = mouth;
    this.inside = inside;
    soft = 1.3 * sampleMm / seen.halfWidth();
    noise = new Noise(mouth.seed() * 100 + seen.tooth());
    number = seen.tooth() % 10 + (mouth.milk() && seen.tooth() % 10 > 3 ? 2 : 0);
  }

  @Override
  public void at(double x, double y, Spot spot) {
    double u = seen.away() * (x - seen.x()) / seen.halfWidth();
    double s = (y - seen.gumY()) / (seen.edgeY() - seen.gumY());
    double across = Math.abs(u) / broad(s);
    double down = (s - 0.5) / (s > 0.5 ? edge(u) - 0.5 : 0.5 + 0.02);
    double power = s > 0.5 ? 5 : 2.3;
    double q = Math.pow(Math.pow(across, power) + Math.pow(Math.abs(down), power), 1 / power);
    if (q >= 1 + soft || chipped(u, s)) {
      return;
    }
    spot.cover = step(1 + soft, 1 - soft, q);
    double dome = Math.pow(Math.max(0, 1 - Math.pow(Math.min(1, q), 3.2)), 0.6);
    spot.height = 1.2 + 1.9 * dome - 2.5 * seen.far() + lobes(u, s);
    spot.gloss = 0.55 * (1 - 0.6 * seen.far());
    spot.colour(mouth.shade());
    spot.tint(0xd9bd8c, 0.5 * step(0.45, 0, s));
    spot.tint(0xb9c0c8, (number <= 3 ? 0.4 : 0.15) * step(0.8, 1, s / edge(u)));
    spot.tint(0xffffff, 0.16 + 0.14 * noise.rough(u * 2, s * 3));
    spot.tint(0xb89a70, 0.45 * step(0.86, 1.02, q));
    marks(u, s, spot);
    spot.tint(0x2a1512, 0.72 * seen.far());
  }

  private double broad(double s) {
    double waist = number <= 2 ? 0.7 : number == 3 ? 0.72 : 0.78;
    return waist + (1 - waist) * step(-0.05, 0.7, s) - 0.04 * step(0.85, 1.1, s);
  }

  private double edge(double u) {
    double around = Math.min(1.2, Math.abs(u));
    double point = number == 3 ? 0.2 : number >= 4 ? 0.15 : 0.03;
    double steps = number >= 6 ? 0.06 * Math.cos(u * 6) : 0;
    return 1 - point * Math.pow(around, 1.4) + steps - (u > 0 ? 0.03 : 0) * around;
  }

  private double lobes(double u, double s) {
    if (inside) {
      return 0.9 * bell(Math.hypot(u, (s - 0.22) * 1.6), 0.42)
          - 1.3 * bell(Math.hypot(u, (s - 0.62) * 1.5), 0.5);
    }
    if (number == 3) {
      return 0.6 * bell(u + 0.05, 0.4);
    }
    return 0.16 * Math.cos(u * 6.2) * step(0.1, 0.6, s) + 0.05 * noise.at(u * 2, s * 14);
  }

  private boolean chipped(double u, double s) {
    return mouth.has(seen.tooth(), Mark.FRACTURED) && s > breakLine(u);
  }

  /** The corner towards the midline is gone below this line. */
  private double breakLine(double u) {
    return 0.62 + 0.5 * (u + 1) + 0.04 * noise.at(u * 5, 1);
  }

  private void marks(double u, double s, Spot spot) {
    int tooth = seen.tooth();
    if (mouth.has(tooth, Mark.DISCOLOURED)) {
      spot.tint(0x87756a, 0.62);
    }
    if (mouth.has(tooth, Mark.GOLD_ONLAY)) {
      double gold = step(0.5, 0.56, s + 0.06 * Math.cos(u * 4));
      spot.tint(0xd9a32b, 0.95 * gold);
      spot.gloss = Noise.mix(spot.gloss, 1.2, gold);
    }
    if (mouth.has(tooth, Mark.GREY_FILLING)) {
      spot.tint(0x6d7278, 0.9 * step(0.36, 0.28, Math.hypot(u - 0.2, (s - 0.86) * 2)));
    }
    if (mouth.has(tooth, Mark.CARIES)) {
      spot.tint(0x3a2214, 0.85 * step(0.4, 0.25, Math.hypot(u + 0.35, (s - 0.75) * 2)));
    }
    if (mouth.has(tooth, Mark.FRACTURED)) {
      spot.tint(0xb98a48, 0.6 * bell(s - breakLine(u) + 0.03, 0.04));
    }
  }
}
