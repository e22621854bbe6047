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
    CaptureWords.StatedMirror mirror = maybe("mirror", words.mirror(), CaptureWords::mirror);
    Boolean trim = maybe("trim", words.trim(), CaptureWords::trim);
    tooLong("treatment", words.treatment(), LONGEST_TREATMENT);
    tooLong("note", words.note(), LONGEST_NOTE);
    Teeth teeth = teeth(words.teeth(), names.get("teeth"));
    var accessories = maybe("accessories", words.accessories(), CaptureWords::accessories);
    return new Understood(
        view(words.view(), names.get("view"), teeth),
        teeth,
        mirror == null ? Mirror.UNKNOWN : mirror.mirror(),
        words.seen() || (mirror != null && mirror.seen()),
        maybe("incisors", words.incisors(), CaptureWords::edge),
        maybe("crop", words.crop(), CaptureWords::crop),
        accessories == null ? List.of() : accessories,
        maybe("stage", words.stage(), Stage::find),
        trim != null && trim,
        problems);
  }

  private @Nullable View view(String said, String named, Teeth teeth) {
    View view = maybe("view", said, words -> find(words, teeth));
    View other = fromName("view", named, words -> find(words, teeth));
    if (view != null && other != null && !view.key().equals(other.key())) {
      disagree("view");
    }
    return view == null && said.isEmpty() ? other : view;
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

  private Teeth teeth(String said, String named) {
    Teeth teeth = maybe("teeth", said, this::undamaged);
    Teeth other = fromName("teeth", named, this::undamaged);
    if (teeth != null && other != null && !teeth.equals(other)) {
      disagree("teeth");
    }
    Teeth found = teeth == null && said.isEmpty() ? other : teeth;
    return found == null ? Teeth.NONE : found;
  }

  private Outcome<Teeth> undamaged(String text) {
    return SpreadsheetDates.probably(text).isPresent()
        ? Outcome.refused("a date stands where teeth are expected", "write teeth as FDI 11-12")
        : teethReader.read(text);
  }

  private <T> @Nullable T maybe(String what, String said, Function<String, Outcome<T>> reader) {
    if (said.isEmpty()) {
      return null;
    }
    Outcome<T> read = reader.apply(said);
    if (read instanceof Outcome.Done<T> done) {
      return done.value();
    }
    Outcome.Refused<T> refused = (Outcome.Refused<T>) read;
    problems.add(
        new WaitReason(Kind.UNKNOWN_WORD, what + ": " + refused.reason(), refused.advice()));
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

  private void tooLong(String what, String said, int most) {
    if (said.codePointCount(0, said.length()) > most) {
      problems.add(
          new WaitReason(
              Kind.UNKNOWN_WORD,
              what + ": it has more than " + most + " characters",
              "shorten it"));
    }
  }
}
