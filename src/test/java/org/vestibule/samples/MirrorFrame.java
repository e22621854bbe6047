package org.vestibule.samples;

import static org.vestibule.samples.Noise.bell;
import static org.vestibule.samples.Noise.step;

/** The rim of the glass and the lips and fingers' shadow around it, soft because out of focus. */
final class MirrorFrame implements Relief.Surface {

  private final double halfWide;
  private final double halfTall;
  private final double centreY;
  private final Noise noise;

  MirrorFrame(double halfWide, double halfTall, double centreY, Noise noise) {
    this.halfWide = halfWide;
    this.halfTall = halfTall;
    this.centreY = centreY;
    this.noise = noise;
  }

  @Override
  public void at(double x, double y, Relief.Spot spot) {
    double across = Math.abs(x) / (halfWide * 0.9);
    double down = Math.abs(y - centreY) / (halfTall * 0.985);
    double q = Math.pow(Math.pow(across, 5) + Math.pow(down, 5), 0.2);
    if (q < 0.975) {
      return;
    }
    spot.cover = step(0.975, 0.985, q);
    spot.height = 2 + 2 * step(1, 1.25, q) + 0.3 * noise.rough(x / 3, y / 3);
    spot.gloss = 0.15;
    spot.colour(0xb4736a);
    spot.tint(0x6e3a39, 0.6 + 0.5 * noise.rough(x / 6, y / 6));
    double rim = bell(q - 0.993, 0.012);
    spot.tint(0xe8eef0, 0.9 * rim);
    spot.gloss += 0.5 * rim;
    spot.tint(0x241012, 0.75 * bell(q - 1.025, 0.018));
  }
}
