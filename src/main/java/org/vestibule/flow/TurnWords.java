package org.vestibule.flow;

import org.vestibule.base.Turn;

/** A turn as a person would say it. */
final class TurnWords {

  private TurnWords() {}

  /** Empty for a picture that was left as it lay. */
  static String of(Turn turn) {
    return switch (turn) {
      case NONE -> "";
      case FLIP_HORIZONTAL -> "flipped left to right";
      case FLIP_VERTICAL -> "flipped top to bottom";
      case ROTATE_180 -> "turned upside down";
      case ROTATE_90 -> "turned a quarter right";
      case ROTATE_270 -> "turned a quarter left";
      case TRANSPOSE -> "turned a quarter right and flipped left to right";
      case TRANSVERSE -> "turned a quarter left and flipped left to right";
    };
  }
}
