package org.vestibule.assign;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.dental.Accessory;
import org.vestibule.dental.Edge;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Stage;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.View;

/**
 * A person's words as the program understood them.
 *
 * @param view if it was named
 * @param teeth that were named; maybe none
 * @param mirror unknown if it was not stated
 * @param seen true if the picture itself was looked at
 * @param onSheet the edge at which the incisors lie in the picture as the look sheet shows it
 * @param upOnSheet the edge of that picture that is towards the top of the head
 * @param crop if not all is to be shown
 * @param accessories what may be visible
 * @param stage of the treatment
 * @param trim true if edges that can't be turned may be dropped
 * @param salvage true if of a damaged picture the sound rows may be filed
 * @param problems what was not understood
 */
record Understood(
    @Nullable View view,
    Teeth teeth,
    Mirror mirror,
    boolean seen,
    @Nullable Incisors onSheet,
    @Nullable Edge upOnSheet,
    @Nullable Crop crop,
    List<Accessory> accessories,
    @Nullable Stage stage,
    boolean trim,
    boolean salvage,
    List<WaitReason> problems) {

  Understood {
    accessories = List.copyOf(accessories);
    problems = List.copyOf(problems);
  }
}
