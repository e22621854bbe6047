package org.vestibule.assign;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.dental.Accessory;
import org.vestibule.dental.Stage;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.View;

/**
 * A photograph of a visit, as far as its series is concerned.
 *
 * @param view what it shows
 * @param teeth it is about; maybe none
 * @param stage of the treatment; null if not stated
 * @param accessories that may be visible
 */
public record TakenView(
    View view, Teeth teeth, @Nullable Stage stage, List<Accessory> accessories) {

  public TakenView {
    accessories = List.copyOf(accessories);
  }

  /** What was decided about a photograph. */
  public static TakenView of(Decision decision) {
    return new TakenView(
        decision.view(), decision.teeth(), decision.stage(), decision.accessories());
  }

  boolean sameAs(TakenView other) {
    return view.key().equals(other.view.key()) && teeth.equals(other.teeth) && stage == other.stage;
  }
}
