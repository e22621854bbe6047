package org.vestibule.card;

/** How a card's photograph is spoilt; the ranges are chosen, no source. */
enum CardFault {
  /** Held by hand: up to 15 degrees askew, a third to nine tenths of the frame's width. */
  PLAIN,
  /** Turned by 30 to 60 degrees away from the camera. */
  TILTED,
  /** Turned in its plane by any angle, as a file before its Exif rotation is. */
  ROTATED,
  /** An eighth to a twentieth of the light, with noise. */
  DIM,
  /** A reflection over a tenth to a half of the card's width. */
  GLOSSY,
  /** Bent to a radius of 60 to 150 mm. */
  CURVED,
  /** 15 to 50 % of the card beyond the frame. */
  OUT_OF_FRAME,
  /** 8 to 18 % of the frame's width. */
  SMALL,
  /** Out of focus or shaken: 2 to 9 samples in 4032. */
  BLURRED,
  /** JPEG quality 10 to 35. */
  COMPRESSED,
  /** Two of the faults above, milder. */
  TWO_FAULTS,
  /** Two to four cards in one frame: to be refused. */
  SEVERAL,
  /** The picture is stored as its mirror image: to be refused. */
  MIRRORED,
  /** No card at all. */
  NO_CARD,
  /** A foreign QR code: no card. */
  FOREIGN;

  /** True if the right answer is the card. */
  boolean readable() {
    return compareTo(SEVERAL) < 0;
  }
}
