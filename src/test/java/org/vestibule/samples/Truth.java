package org.vestibule.samples;

import java.awt.image.BufferedImage;
import java.util.Optional;

/** What a photograph of the sample roll shows when it is laid as it must be shown. */
public final class Truth {

  private Truth() {}

  /** The drawing behind a photograph, in true hand; empty if the plan has no such file. */
  public static Optional<BufferedImage> of(String file) {
    return SampleRoll.plan().stream()
        .filter(shot -> shot.file().equals(file))
        .findFirst()
        .map(Truth::draw);
  }

  private static BufferedImage draw(Shot shot) {
    RawState.Axes shown = shot.scene().shownAs();
    boolean swapped = lies(shown.right()) != lies(shot.seen().right());
    BufferedImage drawn =
        SampleRoll.picture(
            shot.scene(),
            swapped ? shot.height() : shot.width(),
            swapped ? shot.width() : shot.height());
    return SampleRoll.spoil(shot, drawn);
  }

  /** Whether a direction lies along the left-right axis of the patient. */
  private static boolean lies(char direction) {
    return direction == 'L' || direction == 'R';
  }
}
