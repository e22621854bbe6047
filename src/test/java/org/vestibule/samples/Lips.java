package org.vestibule.samples;

import static org.vestibule.samples.Noise.bell;
import static org.vestibule.samples.Noise.step;

/** Lips drawn aside, and at each corner the clear rim of a cheek retractor. */
final class Lips implements Relief.Surface {

  private final double centreX;
  private final double centreY;
  private final double halfWide;
  private final double halfTall;
  private final boolean side;
  private final Noise noise;

  Lips(
      double centreX, double centreY, double halfWide, double halfTall, boolean side, Noise noise) {
    this.centreX = centreX;
    this.centreY = centreY;
    this.halfWide = halfWide;
    this.halfTall = halfTall;
    this.side = side;
    this.noise = noise;
  }

  @Override
  public void at(double x, double y, Relief.Spot spot) {
    double across = (x - centreX) / (halfWide * (side ? 0.97 : 0.93));
    double down = (y - centreY) / (halfTall * 0.86);
    double q = Math.pow(Math.pow(Math.abs(across), 2.6) + Math.pow(Math.abs(down), 2.6), 1 / 2.6);
    double corner = step(0.45, 0.75, Math.abs(across)) * step(0.95, 0.7, Math.abs(down));
    double rim = Math.max(bell(q - 0.985, 0.02), 0.7 * bell(q - 1.06, 0.015)) * corner;
    if (q < 0.93) {
      return;
    }
    spot.cover = step(0.955, 0.97, q);
    spot.colour(0xc9777a);
    double grain = noise.rough(x / 2, y / 2);
    spot.tint(0xe3b296, step(1.12, 1.28, q + 0.03 * grain));
    spot.tint(0x8c4450, (0.35 + 0.35 * noise.at(x * 0.9, y * 0.2)) * step(1.24, 1.1, q));
    spot.height = 3 + 3.2 * Math.sqrt(Math.max(0, 1 - Math.pow((q - 1.09) / 0.16, 2)));
    spot.height += (0.12 * noise.at(x * 1.3, y * 0.3)) * step(1.2, 1.08, q) + 0.05 * grain;
    spot.gloss = 0.35 * step(1.2, 1.05, q);
    spot.tint(0xf3f8fa, 0.75 * rim);
    spot.height += 1.3 * rim;
    spot.gloss += 0.9 * rim;
  }
}
