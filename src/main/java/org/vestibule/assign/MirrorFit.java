package org.vestibule.assign;

import java.util.Optional;
import org.vestibule.assign.WaitReason.Kind;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.View;

/**
 * Whether the stated mirror goes with the view and the accessories. A wrong word here turns right
 * into left, so what is out of the ordinary needs a person who looked at this very picture.
 */
final class MirrorFit {

  private static final String MIRROR_KEY = "mirror";

  private MirrorFit() {}

  static Optional<WaitReason> problem(View view, Understood said) {
    if (said.seen()) {
      return Optional.empty();
    }
    boolean none = said.mirror() == Mirror.NONE;
    if (none && view.usualMirror() == Mirror.AS_SHOT) {
      return contradiction(
          "the view " + view.name() + " is taken in a mirror, but the mirror is stated as none");
    }
    if (said.mirror() == Mirror.AS_SHOT && view.usualMirror() == Mirror.NONE && !view.showsFace()) {
      return contradiction(
          "the view " + view.name() + " is taken without a mirror, but one is stated");
    }
    if (none && said.accessories().stream().anyMatch(each -> each.key().equals(MIRROR_KEY))) {
      return contradiction("a mirror is among the accessories, but the mirror is stated as none");
    }
    return Optional.empty();
  }

  private static Optional<WaitReason> contradiction(String sentence) {
    return Optional.of(
        new WaitReason(
            Kind.CONTRADICTION,
            sentence,
            "look at the preview; correct the word that is wrong, or write \"seen\" after the mirror"
                + " if it is right for this picture"));
  }
}
