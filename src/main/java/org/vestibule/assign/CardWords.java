package org.vestibule.assign;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.WaitReason.Kind;
import org.vestibule.card.ViewCard;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;

/**
 * Adds what a view card settles to what rows and names say. A card names the view before the
 * picture is taken, so it is not believed about what only the picture shows: where the incisors
 * lie, and a mirror that is not the view's usual one. Those need a standing statement or a person;
 * a card that says otherwise than they do lets the photograph wait.
 */
final class CardWords {

  private static final String LOOK = "look at the photograph and correct the one that is wrong";

  private final ViewCatalogue views;
  private final @Nullable ViewCard card;
  private final @Nullable WaitReason reason;

  CardWords(ViewCatalogue views, SortedView sorted) {
    this.views = views;
    this.card = sorted.card();
    this.reason = sorted.reason();
  }

  /** What is understood with the card: it fills what nobody said. */
  Understood added(Understood said) {
    List<WaitReason> problems = new ArrayList<>(said.problems());
    View named = view();
    if (said.view() == null && reason != null) {
      problems.add(reason);
    }
    Optional<WaitReason> unsafe = unsafe(said, named);
    unsafe.ifPresent(problems::add);
    boolean fills = said.view() == null && named != null && unsafe.isEmpty();
    View view = fills ? named : said.view();
    return new Understood(
        view,
        said.teeth(),
        mirror(said, view),
        said.seen(),
        said.onSheet(),
        said.upOnSheet(),
        said.crop(),
        said.accessories(),
        said.stage() == null && card != null ? card.stage() : said.stage(),
        said.trim(),
        said.salvage(),
        problems);
  }

  private @Nullable View view() {
    return card == null ? null : views.byKey(card.view()).orElse(null);
  }

  private Optional<WaitReason> unsafe(Understood said, @Nullable View named) {
    if (card == null) {
      return Optional.empty();
    }
    if (named == null) {
      return Optional.of(
          new WaitReason(
              Kind.UNKNOWN_WORD,
              "the view card before it names a view that is not known here",
              "draw the view cards again"));
    }
    if (said.view() != null && !said.view().key().equals(named.key())) {
      return Optional.of(
          new WaitReason(
              Kind.CONTRADICTION,
              "the view card before it names another view than its row or its name",
              LOOK));
    }
    boolean sided = named.side() != null || named.arch() != null;
    return said.view() == null && sided && Counterparts.of(named.key()).isEmpty()
        ? Optional.of(
            new WaitReason(
                Kind.NO_VIEW,
                "the view card before it names a side or an arch, and a card alone does not settle"
                    + " that for the view "
                    + named.name(),
                "look at it and name the view"))
        : Optional.empty();
  }

  private Mirror mirror(Understood said, @Nullable View view) {
    boolean usual =
        card != null
            && view != null
            && card.mirror() != null
            && card.mirror() != Mirror.UNKNOWN
            && card.mirror() == view.usualMirror();
    return said.mirror() == Mirror.UNKNOWN && usual && card != null && card.mirror() != null
        ? card.mirror()
        : said.mirror();
  }

  /** True if a reason of ours already says why no view is known. */
  boolean explains(Understood said) {
    return said.view() == null && !said.problems().isEmpty() && (reason != null || card != null);
  }

  /** Where the card says otherwise than what is known of the capture. */
  Optional<WaitReason> contradiction(Understood said, CaptureStatement capture) {
    if (card == null) {
      return Optional.empty();
    }
    Mirror mirror = card.mirror();
    boolean otherMirror =
        mirror != null
            && mirror != Mirror.UNKNOWN
            && capture.mirror() != Mirror.UNKNOWN
            && mirror != capture.mirror();
    boolean otherIncisors =
        card.incisors() != null && capture.raw() != null && card.incisors() != capture.raw();
    Teeth teeth = card.teeth();
    boolean otherTeeth =
        teeth != null && !teeth.isEmpty() && !said.teeth().isEmpty() && !teeth.equals(said.teeth());
    if (!otherMirror && !otherIncisors && !otherTeeth) {
      return Optional.empty();
    }
    return Optional.of(
        new WaitReason(
            Kind.CONTRADICTION,
            "the view card before it names "
                + (otherMirror
                    ? "another mirror"
                    : otherIncisors ? "other incisors" : "other teeth")
                + " than what is stated for it",
            LOOK));
  }

  /** What the decision rests on. */
  List<String> facts(Understood read) {
    return card != null && read.view() == null
        ? List.of("the view by the view card before it")
        : card != null ? List.of("the view card before it says the same") : List.of();
  }
}
