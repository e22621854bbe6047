package org.vestibule.flow;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.PersonWords;
import org.vestibule.assign.PhotoFact;
import org.vestibule.assign.Stated;
import org.vestibule.base.Turn;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.View;
import org.vestibule.intake.CaptureFacts;

/** Holds a person's words of a photograph against everything else that is known of it. */
final class Doubts {

  private final PersonWords said;
  private final Stated stated;
  private final List<Doubt> found = new ArrayList<>();

  private Doubts(PersonWords said, Stated stated) {
    this.said = said;
    this.stated = stated;
  }

  /**
   * What speaks against the words.
   *
   * @param known what list, name or cards say, by word of the fact
   */
  static List<Doubt> of(
      PersonWords said, Stated stated, CaptureFacts facts, Map<String, String> known) {
    Doubts doubts = new Doubts(said, stated);
    doubts.otherwise(known);
    doubts.camera(facts);
    doubts.usual();
    return List.copyOf(doubts.found);
  }

  private void otherwise(Map<String, String> known) {
    differs(Doubt.Kind.OTHER_VIEW, known.get(PhotoFact.VIEW.word()), stated.view().key());
    differs(Doubt.Kind.OTHER_TEETH, known.get(PhotoFact.TEETH.word()), stated.teeth().text());
    differs(Doubt.Kind.OTHER_MIRROR, known.get(PhotoFact.MIRROR.word()), mirror());
    if (stated.view().occlusal()) {
      differs(
          Doubt.Kind.OTHER_INCISORS,
          known.get(PhotoFact.INCISORS.word()),
          said.get(PhotoFact.INCISORS));
    }
    if (said.says(PhotoFact.VISIT)) {
      differs(Doubt.Kind.OTHER_VISIT, known.get(PhotoFact.VISIT.word()), said.get(PhotoFact.VISIT));
    }
  }

  private String mirror() {
    return switch (stated.mirror()) {
      case NONE -> "none";
      case AS_SHOT -> "as shot";
      case CORRECTED -> "corrected";
      case UNKNOWN -> "";
    };
  }

  private void differs(Doubt.Kind kind, @Nullable String known, String now) {
    if (known != null && !known.isEmpty() && !known.equalsIgnoreCase(now)) {
      found.add(new Doubt(kind, known));
    }
  }

  private void camera(CaptureFacts facts) {
    Integer exif = facts.orientation();
    boolean level = !stated.view().occlusal();
    String up = said.get(PhotoFact.UP);
    if (level && exif != null && !up.isEmpty() && !up.equals("top")) {
      found.add(new Doubt(Doubt.Kind.CAMERA_UP, up));
    }
    add(facts.edited(), Doubt.Kind.EDITED);
    add(facts.frontLens(), Doubt.Kind.FRONT_LENS);
    add(exif != null && Turn.asShown(exif).reflects(), Doubt.Kind.REFLECTED);
  }

  private void usual() {
    View view = stated.view();
    boolean direct = stated.mirror() == Mirror.NONE;
    add(direct && view.usualMirror() == Mirror.AS_SHOT, Doubt.Kind.USUALLY_MIRROR);
    add(!direct && view.showsFace(), Doubt.Kind.FACE_IN_MIRROR);
    add(
        !direct && !view.showsFace() && view.usualMirror() == Mirror.NONE,
        Doubt.Kind.USUALLY_DIRECT);
  }

  private void add(boolean doubtful, Doubt.Kind kind) {
    if (doubtful) {
      found.add(new Doubt(kind, ""));
    }
  }
}
