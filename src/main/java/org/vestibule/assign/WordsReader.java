package org.vestibule.assign;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.WaitReason.Kind;
import org.vestibule.base.Outcome;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Stage;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;

/** Understands a person's words, together with what the photograph's names say of it. */
final class WordsReader {

  private static final int LONGEST_TREATMENT = 64;
  private static final int LONGEST_NOTE = 1_000;

  private final ViewCatalogue views;
  private final TeethReader teethReader;
  private final List<WaitReason> problems = new ArrayList<>();

  WordsReader(ViewCatalogue views, TeethReader teethReader) {
    this.views = views;
    this.teethReader = teethReader;
  }

  Understood read(PersonWords words, NameFacts names) {
    CaptureWords.StatedMirror mirror = maybe(words, PhotoFact.MIRROR, CaptureWords::mirror);
    Boolean trim = maybe(words, PhotoFact.TRIM, CaptureWords::yesOrNo);
    Boolean salvage = maybe(words, PhotoFact.SALVAGE, CaptureWords::yesOrNo);
    tooLong(words, PhotoFact.TREATMENT, LONGEST_TREATMENT);
    tooLong(words, PhotoFact.NOTE, LONGEST_NOTE);
    Teeth teeth = teeth(words, names.get("teeth"));
    var accessories = maybe(words, PhotoFact.ACCESSORIES, CaptureWords::accessories);
    return new Understood(
        view(words, names.get("view"), teeth),
        teeth,
        mirror == null ? Mirror.UNKNOWN : mirror.mirror(),
        words.seen() || (mirror != null && mirror.seen()),
        maybe(words, PhotoFact.INCISORS, CaptureWords::incisors),
        maybe(words, PhotoFact.UP, CaptureWords::up),
        maybe(words, PhotoFact.CROP, Crop::read),
        accessories == null ? List.of() : accessories,
        maybe(words, PhotoFact.STAGE, Stage::find),
        trim != null && trim,
        salvage != null && salvage,
        problems);
  }

  private @Nullable View view(PersonWords said, String named, Teeth teeth) {
    View view = maybe(said, PhotoFact.VIEW, words -> find(words, teeth));
    View other = fromName("view", named, words -> find(words, teeth));
    if (view != null && other != null && !view.key().equals(other.key())) {
      disagree("view");
    }
    return view == null && !said.says(PhotoFact.VIEW) ? other : view;
  }

  /**
   * The view that the words name. Where they leave open only which arch, as "shade tab" does, the
   * teeth that were named tell; a side is never settled in this way.
   */
  private Outcome<View> find(String words, Teeth teeth) {
    Outcome<View> found = views.find(words);
    if (found instanceof Outcome.Done<View> || teeth.isEmpty()) {
      return found;
    }
    List<View> named = views.allNaming(words);
    List<View> fitting =
        named.stream().filter(view -> ViewFit.problem(view, teeth).isEmpty()).toList();
    boolean sided = named.stream().anyMatch(view -> view.side() != null);
    return fitting.size() == 1 && !sided ? Outcome.done(fitting.get(0)) : found;
  }

  private Teeth teeth(PersonWords said, String named) {
    Teeth teeth = maybe(said, PhotoFact.TEETH, this::undamaged);
    Teeth other = fromName("teeth", named, this::undamaged);
    if (teeth != null && other != null && !teeth.equals(other)) {
      disagree("teeth");
    }
    Teeth found = teeth == null && !said.says(PhotoFact.TEETH) ? other : teeth;
    return found == null ? Teeth.NONE : found;
  }

  private Outcome<Teeth> undamaged(String text) {
    return SpreadsheetDates.probably(text).isPresent()
        ? Outcome.refused("a date stands where teeth are expected", "write teeth as FDI 11-12")
        : teethReader.read(text);
  }

  private <T> @Nullable T maybe(
      PersonWords said, PhotoFact fact, Function<String, Outcome<T>> reader) {
    if (!said.says(fact)) {
      return null;
    }
    Outcome<T> read = reader.apply(said.get(fact));
    if (read instanceof Outcome.Done<T> done) {
      return done.value();
    }
    Outcome.Refused<T> refused = (Outcome.Refused<T>) read;
    problems.add(
        new WaitReason(Kind.UNKNOWN_WORD, fact.word() + ": " + refused.reason(), refused.advice()));
    return null;
  }

  /** A word from a name is never repeated: it may be a patient's. */
  private <T> @Nullable T fromName(String what, String named, Function<String, Outcome<T>> reader) {
    if (named.isEmpty()) {
      return null;
    }
    if (reader.apply(named) instanceof Outcome.Done<T> done) {
      return done.value();
    }
    problems.add(
        new WaitReason(
            Kind.UNKNOWN_WORD,
            what
                + ": its folder or file name has something that is not understood where the "
                + what
                + " is expected",
            "rename it, or correct the name patterns in the settings"));
    return null;
  }

  private void disagree(String what) {
    problems.add(
        new WaitReason(
            Kind.CONTRADICTION,
            "its row names another " + what + " than its folder or file name",
            "look at the photograph and correct the one that is wrong"));
  }

  private void tooLong(PersonWords words, PhotoFact fact, int most) {
    String said = words.get(fact);
    if (said.codePointCount(0, said.length()) > most) {
      problems.add(
          new WaitReason(
              Kind.UNKNOWN_WORD,
              fact.word() + ": it has more than " + most + " characters",
              "shorten it"));
    }
  }
}
