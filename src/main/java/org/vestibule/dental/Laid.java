package org.vestibule.dental;

import java.util.List;
import org.vestibule.base.Turn;

/**
 * How a picture is to be laid before the viewer.
 *
 * @param turn the one turn to apply to the raw picture
 * @param shown the Patient Orientation of the turned picture
 * @param viewModifiers view modifier codes for the turned picture
 * @param because the facts it follows from, in words
 */
public record Laid(
    Turn turn, PatientOrientation shown, List<Code> viewModifiers, List<String> because) {

  public Laid {
    viewModifiers = List.copyOf(viewModifiers);
    because = List.copyOf(because);
  }
}
