package org.vestibule.release;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.dental.PatientOrientation.Edges;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.Tooth;

/**
 * What the sheet says of one picture.
 *
 * @param name of the copy's files, without ending
 * @param who the patient or the pseudonym
 * @param when a day, an interval, or nothing, as the record keeps it
 * @param view its English name, as the record keeps it
 * @param teeth that were named for it
 * @param edges what lies at the four margins, from the picture's Patient Orientation; null if it
 *     has none
 * @param thumbnail a small JPEG of the upright picture, in base 64
 */
record SheetRow(
    String name,
    String who,
    String when,
    String view,
    Teeth teeth,
    @Nullable Edges edges,
    String thumbnail,
    int width,
    int height) {

  /** The teeth that were named, without areas. */
  List<Tooth> named() {
    return teeth.teeth();
  }

  String left(SheetWords words) {
    return edges == null ? words.say("side-unknown") : words.side(edges.left());
  }

  String right(SheetWords words) {
    return edges == null ? words.say("side-unknown") : words.side(edges.right());
  }
}
