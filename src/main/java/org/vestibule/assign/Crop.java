package org.vestibule.assign;

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
}
