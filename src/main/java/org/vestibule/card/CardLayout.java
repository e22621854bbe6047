package org.vestibule.card;

/**
 * Where things stand on a card, in millimetres from its top left corner.
 *
 * <p>A card bears its code twice, the second one upside down: glare, a finger or the edge of the
 * picture seldom takes both. Seen from either code the other lies to its right, so that whoever has
 * read one knows where to look for the other.
 */
final class CardLayout {

  /** A6 lying. */
  static final float WIDTH = 148;

  static final float HEIGHT = 105;

  /** Side of a code without the light modules around it. */
  static final float CODE = 54;

  static final float CODE_TOP = 9;
  static final float LEFT_CODE = 10;
  static final float RIGHT_CODE = WIDTH - LEFT_CODE - CODE;

  /** Below the codes, from the left code's left edge to the right code's right edge. */
  static final float TEXT_WIDTH = WIDTH - 2 * LEFT_CODE;

  /** From a code to its twin, in sides of a code. */
  static final float TWIN_SHIFT = (RIGHT_CODE - LEFT_CODE) / CODE;

  private CardLayout() {}
}
