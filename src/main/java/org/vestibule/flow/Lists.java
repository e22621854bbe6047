package org.vestibule.flow;

import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.AssignSources;
import org.vestibule.assign.Assigner;
import org.vestibule.assign.Assignment.Decided;
import org.vestibule.assign.CaptureDeclaration;
import org.vestibule.assign.Manifest;
import org.vestibule.assign.NamePattern;
import org.vestibule.assign.PersonWords;
import org.vestibule.assign.RollAssigner;
import org.vestibule.assign.RollCards;
import org.vestibule.assign.Stated;
import org.vestibule.assign.Visit;
import org.vestibule.assign.VisitList;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.look.Say;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.Roll;

/** Reads the practice's lists and settings into what assigns photographs. */
final class Lists {

  private final Practice practice;

  Lists(Practice practice) {
    this.practice = practice;
  }

  /**
   * For a folder's photographs, with the manifest if there is one; adds what is odd to the notes.
   */
  Outcome<RollAssigner> forRoll(
      IngestRequest request, Roll roll, Supplier<RollCards> cards, Tally tally) {
    return sources(request, tally)
        .map(
            sources -> {
              RollAssigner assigner =
                  new Assigner(sources).forRoll(roll, cards.get(), new PhoneWords(practice)::of);
              assigner.warnings().forEach(warning -> tally.note("manifest: " + warning + "."));
              assigner.sorting().notes().forEach(note -> tally.concern("cards: " + note + "."));
              return assigner;
            });
  }

  /** Refused if a list or a setting can't be used: asked before each photograph is looked at. */
  Outcome<AssignSources> usable(IngestRequest request) {
    return sources(request, new Tally());
  }

  private Outcome<AssignSources> sources(IngestRequest request, Tally tally) {
    Manifest manifest = null;
    if (Files.exists(request.manifest())) {
      Outcome<Manifest> read = named("the manifest", Manifest.read(request.manifest()));
      if (!(read instanceof Done<Manifest> done)) {
        return ((Refused<Manifest>) read).as();
      }
      manifest = done.value();
      manifest.warnings().forEach(warning -> tally.note("manifest: " + warning + "."));
    }
    return sources(manifest, request.by(), tally);
  }

  /** What a named person says about one photograph. */
  Outcome<Decided> byPerson(CaptureFacts facts, PersonWords words) {
    return sources(null, words.by(), new Tally())
        .then(sources -> new Assigner(sources).byPerson(facts, words));
  }

  /** The same of the picture alone, before it is said whose it is. */
  Outcome<Stated> stated(CaptureFacts facts, PersonWords words) {
    return sources(null, words.by(), new Tally())
        .then(sources -> new Assigner(sources).stated(facts, words));
  }

  /** True if the photograph's time does not lie in the visit. */
  Outcome<Boolean> outside(CaptureFacts facts, Visit visit) {
    return sources(null, "", new Tally())
        .map(sources -> new Assigner(sources).outside(facts, visit));
  }

  private Outcome<AssignSources> sources(@Nullable Manifest manifest, String by, Tally tally) {
    Settings settings = practice.settings();
    Outcome<VisitList> visits = new VisitBook(practice).all();
    if (!(visits instanceof Done<VisitList> known)) {
      return ((Refused<VisitList>) visits).as();
    }
    known.value().warnings().forEach(warning -> tally.note("visit list: " + warning + "."));
    known
        .value()
        .disputed()
        .forEach(
            against ->
                tally.concern(
                    "visit list, visit "
                        + against.visit().key()
                        + ": "
                        + against.sentence()
                        + "; nothing is filed under it. "
                        + Say.sentence(against.advice())));
    Outcome<List<NamePattern>> patterns = patterns();
    if (!(patterns instanceof Done<List<NamePattern>> names)) {
      return ((Refused<List<NamePattern>>) patterns).as();
    }
    return declarations()
        .map(
            declared ->
                new AssignSources(
                    known.value(),
                    manifest,
                    names.value(),
                    settings.oneExport(),
                    declared,
                    practice.views(),
                    practice.teeth(),
                    settings.lowerArch(),
                    settings.zone(),
                    by));
  }

  private Outcome<List<NamePattern>> patterns() {
    List<NamePattern> patterns = new ArrayList<>();
    for (String text : practice.settings().namePatterns()) {
      Outcome<NamePattern> parsed = NamePattern.parse(text);
      if (!(parsed instanceof Done<NamePattern> done)) {
        return ((Refused<NamePattern>) parsed).as();
      }
      patterns.add(done.value());
    }
    return Outcome.done(patterns);
  }

  private Outcome<List<CaptureDeclaration>> declarations() {
    List<CaptureDeclaration> declared = new ArrayList<>();
    for (Settings.StatedCapture stated : practice.settings().captures()) {
      if (practice.views().byKey(stated.view()).isEmpty()) {
        return Outcome.refused(
            "a [[capture]] in the settings names the view \"" + stated.view() + "\"",
            "use a key of the view catalogue, such as upper-occlusal");
      }
      Outcome<CaptureDeclaration> made =
          CaptureDeclaration.of(
              stated.view(), stated.camera(), stated.mirror(), stated.incisors(), stated.by());
      if (!(made instanceof Done<CaptureDeclaration> done)) {
        return ((Refused<CaptureDeclaration>) made).as();
      }
      declared.add(done.value());
    }
    return Outcome.done(declared);
  }

  /** A refusal of a list's row says which list: whoever reads it has two of them open. */
  static <T> Outcome<T> named(String list, Outcome<T> read) {
    return read instanceof Refused<T> refused && refused.reason().startsWith("row ")
        ? Outcome.refused(list + ", " + refused.reason(), refused.advice())
        : read;
  }
}
