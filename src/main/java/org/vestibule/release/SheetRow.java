package org.vestibule.release;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.dental.PatientOrientation.Edges;
import org.vestibule.dental.Tooth;

/**
 * What the sheet says of one picture.
 *
 * @param name of the copy's files, without ending
 * @param who the patient or the pseudonym
 * @param when a day, an interval, or nothing
 * @param named teeth that were named for it
 * @param edges what lies at the four margins, from the picture's Patient Orientation; null if it
 *     has none
 * @param thumbnail a small JPEG of the upright picture, in base 64
 */
record SheetRow(
    String name,
    String who,
    String when,
    String view,
    String teeth,
    List<Tooth> named,
    @Nullable Edges edges,
    String thumbnail,
    int width,
    int height) {

  SheetRow {
    named = List.copyOf(named);
  }

  String left() {
    return edges == null ? "side not known" : edges.left();
  }

  String right() {
    return edges == null ? "side not known" : edges.right();
  }
}
