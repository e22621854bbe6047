package org.vestibule.encode;

import org.vestibule.dental.View;

/**
 * What sets one series of a visit apart from another: what is photographed (the body part is an
 * attribute of the series, PS3.3 C.7.3.1) and whether it holds whole frames of cropped pictures.
 *
 * @param set stable name, part of the series' identity
 * @param description for people
 * @param bodyPart a term of PS3.16 Annex L
 */
public record SeriesWords(String set, String description, String bodyPart) {

  /** The series for a view in a role; a frame beside a crop is kept apart from the crops. */
  public static SeriesWords of(View view, Role role, boolean cropped) {
    boolean face = view.showsFace();
    String part = face ? "face" : "mouth";
    String bodyPart = face ? "FACE" : "MOUTH";
    if (role == Role.FRAME && cropped) {
      return new SeriesWords(
          part + "-uncropped", "Photographs of the " + part + ", whole frames", bodyPart);
    }
    return new SeriesWords(
        part, "Photographs of the " + part + (cropped ? ", cropped" : ""), bodyPart);
  }
}
