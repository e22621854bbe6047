package org.vestibule.assign;

import org.vestibule.base.Outcome;

/**
 * The part of a picture to show, as fractions of the picture as the look sheet shows it (turned by
 * Exif, mirror images still mirrored): 0 is the left or top edge, 1 the right or bottom edge.
 */
public record Crop(double left, double top, double right, double bottom) {

  public Crop {
    if (!(left >= 0 && left < right && right <= 1 && top >= 0 && top < bottom && bottom <= 1)) {
      throw new IllegalArgumentException(
          "a crop's fractions must be from 0 to 1 with left before right and top before bottom");
    }
  }

  /** Reads four fractions: left, top, right, bottom, with commas, bars or spaces between them. */
  public static Outcome<Crop> read(String words) {
    String[] parts = words.strip().split("\\s*[,;|]\\s*|\\s+", -1);
    try {
      if (parts.length == 4) {
        return Outcome.done(
            new Crop(
                Double.parseDouble(parts[0]),
                Double.parseDouble(parts[1]),
                Double.parseDouble(parts[2]),
                Double.parseDouble(parts[3])));
      }
    } catch (IllegalArgumentException notFractions) {
      return notRead();
    }
    return notRead();
  }

  private static Outcome<Crop> notRead() {
    return Outcome.refused(
        "the crop is not four fractions from 0 to 1 with left before right and top before bottom",
        "write left, top, right, bottom, such as 0.1,0.2,0.9,0.8, or leave it out");
  }

  /** The fractions as {@link #read} reads them. */
  public String words() {
    return left + "," + top + "," + right + "," + bottom;
  }
}
