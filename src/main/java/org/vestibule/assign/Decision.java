package org.vestibule.assign;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.vestibule.dental.Accessory;
import org.vestibule.dental.Edge;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Stage;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.View;

/**
 * What was decided about a photograph: enough to file it.
 *
 * @param visit whose it is and when
 * @param view what it shows
 * @param teeth the teeth a person named; maybe none
 * @param mirror whether the file holds a mirror image
 * @param incisors the edge of the RAW picture at which the incisors lie, if stated
 * @param up the edge of the RAW picture that is towards the top of the head, if stated
 * @param seen true if a person looked at this very picture when stating the mirror
 * @param crop the part to show, if not all
 * @param accessories what may be visible in it
 * @param stage of the treatment, if stated
 * @param treatment it belongs to; empty if not stated
 * @param note about the photograph; empty if none
 * @param mayTrim true if edges that can't be turned without re-encoding may be dropped
 * @param maySalvage true if of a damaged picture the sound rows may be filed
 * @param decidedBy the person's name
 * @param facts what the decision rests on, in words
 */
public record Decision(
    Visit visit,
    View view,
    Teeth teeth,
    Mirror mirror,
    @Nullable Incisors incisors,
    @Nullable Edge up,
    boolean seen,
    @Nullable Crop crop,
    List<Accessory> accessories,
    @Nullable Stage stage,
    String treatment,
    String note,
    boolean mayTrim,
    boolean maySalvage,
    String decidedBy,
    List<String> facts) {

  public Decision {
    accessories = List.copyOf(accessories);
    facts = List.copyOf(facts);
  }

  /** What was decided, without who decided it and why. */
  public Decision withoutWho() {
    return new Decision(
        visit,
        view,
        teeth,
        mirror,
        incisors,
        up,
        seen,
        crop,
        accessories,
        stage,
        treatment,
        note,
        mayTrim,
        maySalvage,
        "",
        List.of());
  }

  /**
   * The decision as a person would have said it.
   *
   * @param exifOrientation of the photograph, by which the look sheet turns it
   */
  public Map<PhotoFact, String> said(@Nullable Integer exifOrientation) {
    FactWords said = new FactWords();
    said.put(PhotoFact.VISIT, visit.key());
    said.put(PhotoFact.PATIENT, visit.patient().id());
    said.view(view);
    said.teeth(teeth);
    said.mirror(mirror);
    said.edges(incisors, up, exifOrientation);
    said.crop(crop);
    said.accessories(accessories);
    said.stage(stage);
    said.put(PhotoFact.TREATMENT, treatment);
    said.put(PhotoFact.NOTE, note);
    said.put(PhotoFact.TRIM, mayTrim ? "yes" : null);
    said.put(PhotoFact.SALVAGE, maySalvage ? "yes" : null);
    return said.all();
  }
}
