package org.vestibule.samples;

import static org.vestibule.samples.Noise.bell;
import static org.vestibule.samples.Noise.step;

import java.awt.image.BufferedImage;
import org.vestibule.samples.Mouth.Mark;

/**
 * An arch, or one tooth and its neighbours, as seen in true hand from the chewing side: the upper
 * arch with the front teeth up, the lower with the front teeth down.
 */
final class OcclusalArt {

  private final Mouth mouth;
  private final boolean upper;
  private final Arch arch;
  private final Noise noise;

  OcclusalArt(Mouth mouth, boolean upper) {
    this.mouth = mouth;
    this.upper = upper;
    arch = new Arch(mouth, upper);
    noise = new Noise(mouth.seed() + (upper ? 1 : 2));
  }

  /** The whole arch in a mirror. */
  BufferedImage whole(int width, int height) {
    double tall = Math.max(arch.end + 20, 1.7 * (arch.halfWidth + 6.5));
    double scale = height / tall;
    double wide = width / scale;
    double first = -9.5;
    Relief relief = new Relief(width, height, scale, -wide / 2, upper ? first : -(first + tall));
    paint(relief);
    double centreY = first + tall / 2;
    relief.layAll(new MirrorFrame(wide / 2, tall / 2, upper ? centreY : -centreY, noise));
    return relief.lit();
  }

  /** One tooth and its neighbours. */
  BufferedImage around(int tooth, int width, int height) {
    Arch.Place place = arch.place(tooth);
    double tall = 25;
    double scale = height / tall;
    double y = upper ? place.y() : -place.y();
    Relief relief = new Relief(width, height, scale, place.x() - width / scale / 2, y - tall / 2);
    paint(relief);
    return relief.lit();
  }

  private void paint(Relief relief) {
    relief.layAll((x, y, spot) -> ground(x, upper ? y : -y, spot));
    for (Arch.Place place : arch.places()) {
      if (!mouth.has(place.tooth(), Mark.MISSING)) {
        OcclusalTooth tooth = new OcclusalTooth(place, mouth, upper, relief.sampleMm());
        double radius = 0.8 * Math.max(place.crown().width(), place.crown().depth());
        relief.lay(
            place.x(),
            upper ? place.y() : -place.y(),
            radius,
            (x, y, spot) -> tooth.at(x, upper ? y : -y, spot));
      }
    }
  }

  /** Gum, palate or tongue, cheek, in the arch's own frame. */
  private void ground(double x, double y, Relief.Spot spot) {
    spot.cover = 1;
    double outside = arch.outside(x, y);
    double back = step(arch.end + 4, arch.end + 11, y);
    double ridge = bell(outside, 6.2) * (1 - back);
    spot.height = -7 + 8.5 * ridge;
    spot.colour(0x8c3f3d);
    spot.gloss = 0.25;
    spot.tint(0xd98f88, 1.15 * ridge);
    double grain = noise.rough(x * 1.6, y * 1.6);
    spot.tint(0xa9504c, 0.25 + 0.22 * grain);
    spot.height += 0.05 * grain + 0.03 * noise.at(x * 4, y * 4) + 0.35 * noise.at(x / 4, y / 4);
    if (outside < 0) {
      inside(x, y, outside, spot);
    } else {
      spot.tint(0x5c2424, step(5, 15, outside));
      spot.height += 5 * step(9, 20, outside);
    }
    spot.tint(0x3a1517, back * 0.8);
    spot.height -= 5 * back;
  }

  private void inside(double x, double y, double outside, Relief.Spot spot) {
    double depth = step(0, -12, outside);
    if (upper) {
      palate(x, y, depth, spot);
    } else {
      tongue(x, y, spot);
    }
  }

  private void palate(double x, double y, double depth, Relief.Spot spot) {
    spot.tint(0xd99a90, 0.75 * depth);
    spot.height += 3.4 * depth;
    double front = step(5, 9, y) * step(0.6 * arch.end, 0.38 * arch.end, y);
    double fold = Math.sin((y + 0.16 * Math.abs(x) - 2.4 * noise.at(x / 7, y / 5)) * 1.75);
    double beside = step(0.8, 2.5, Math.abs(x)) * step(15, 9, Math.abs(x));
    spot.height += 0.55 * front * beside * depth * Math.max(0, fold);
    double seam = bell(x + 0.5 * noise.at(y / 4, 1), 0.7) * step(8, 14, y);
    spot.height += 0.5 * seam;
    spot.tint(0xeab5a9, 0.4 * seam * depth);
    double papilla = bell(Math.hypot(x * 1.6, y - 9.5), 1.9);
    spot.height += 1.2 * papilla;
    spot.tint(0xe29a92, 0.6 * papilla);
  }

  private void tongue(double x, double y, Relief.Spot spot) {
    double wide = 0.72 * arch.halfWidth;
    double start = mouth.milk() ? 9.5 : 15;
    double q = Math.hypot(x / wide, (y - start - 28) / 28.0);
    if (q < 1.02) {
      double part = step(1.02, 0.98, q);
      double grain = noise.rough(x * 2.2, y * 2.2);
      spot.tint(0xcf7d7c, 0.95 * part);
      spot.tint(0xf0c6bf, part * (0.22 + 0.4 * grain));
      double dome = 7.5 * Math.sqrt(Math.max(0, 1 - q * q)) - 5;
      double furrow = bell(x + noise.at(y / 6, 4), 0.8) * step(start + 4, start + 12, y);
      spot.height = Noise.mix(spot.height, dome + 0.1 * grain - 0.6 * furrow, part);
      spot.gloss = 0.35;
    }
  }
}
