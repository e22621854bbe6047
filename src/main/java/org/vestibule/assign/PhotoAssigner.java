package org.vestibule.assign;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.WaitReason.Kind;
import org.vestibule.base.Outcome;
import org.vestibule.dental.Laid;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.View;
import org.vestibule.intake.CaptureFacts;

/** Decides one photograph, or says what is known of it and why it waits. */
final class PhotoAssigner {

  private final AssignSources sources;
  private final CaptureFacts facts;
  private final PhotoTime time;

  PhotoAssigner(AssignSources sources, CaptureFacts facts) {
    this(sources, facts, PhotoTime.of(facts, sources.zone()));
  }

  /**
   * @param time on the practice's clock, corrected if the phone's clock was wrong
   */
  PhotoAssigner(AssignSources sources, CaptureFacts facts, PhotoTime time) {
    this.sources = sources;
    this.facts = facts;
    this.time = time;
  }

  /** Decides, unless there is a reason already or one is found. */
  Assignment assign(PersonWords words, NameFacts names, List<WaitReason> already) {
    return assign(words, names, Sorted.NONE, already);
  }

  /** The same with what the cards say. */
  Assignment assign(PersonWords words, NameFacts names, Sorted sorted, List<WaitReason> already) {
    VisitFinding finding =
        new VisitFinder(sources.visits(), sources.oneExport(), words, names, time, sorted).find();
    Understood read = new WordsReader(sources.views(), sources.teeth()).read(words, names);
    CardWords card = new CardWords(sources.views(), sorted.view());
    Understood said = card.added(read);
    CaptureStatement capture = CaptureStatement.of(said, facts, sources.declarations());
    List<WaitReason> reasons = new ArrayList<>(already);
    reasons.addAll(finding.reasons());
    reasons.addAll(said.problems());
    boolean unsaid = !words.says(PhotoFact.VIEW) && !card.explains(said);
    Laid laid = laid(said, capture, unsaid, reasons);
    card.contradiction(read, capture).ifPresent(reasons::add);
    Visit visit = finding.decided().orElse(null);
    View view = said.view();
    if (visit == null || view == null || laid == null || !reasons.isEmpty()) {
      reasons.sort((one, other) -> one.kind().compareTo(other.kind()));
      return new Assignment.Waits(proposal(finding, words, said, capture), reasons);
    }
    List<String> because = new ArrayList<>(finding.facts());
    because.addAll(card.facts(read));
    because.addAll(capture.facts());
    return decided(visit, view, words, said, capture, laid, because);
  }

  /** Why the words can't be followed for this view, and the way to lay the picture if they can. */
  private @Nullable Laid laid(
      Understood said, CaptureStatement capture, boolean viewUnsaid, List<WaitReason> reasons) {
    View view = said.view();
    if (view == null) {
      if (viewUnsaid) {
        reasons.add(
            new WaitReason(
                Kind.NO_VIEW,
                "nobody said which view it shows",
                "name the view, such as upper occlusal, and the mirror"));
      }
      return null;
    }
    ViewFit.problem(view, said.teeth()).ifPresent(reasons::add);
    MirrorFit.problem(view, said).ifPresent(reasons::add);
    WaitReason doubt = capture.doubt();
    if (doubt != null) {
      reasons.add(doubt);
      return null;
    }
    Outcome<Laid> laid = capture.lay(view, sources.lowerArch(), facts);
    if (laid instanceof Outcome.Done<Laid> done) {
      return done.value();
    }
    reasons.add(capture.reason((Outcome.Refused<Laid>) laid));
    return null;
  }

  /** Files by a person's word, or refuses with what is missing or can't be true. */
  Outcome<Assignment.Decided> byPerson(PersonWords words) {
    if (words.by().isEmpty()) {
      return Outcome.refused("nobody is named as the person who decides", "say who you are");
    }
    return new PersonsVisit(sources.visits(), words, time)
        .find()
        .then(finding -> byPerson(words, finding));
  }

  private Outcome<Assignment.Decided> byPerson(PersonWords words, VisitFinding finding) {
    return worded(words)
        .then(
            worded -> {
              Visit visit = finding.decided().orElse(null);
              if (visit == null) {
                return Outcome.refused(
                    "nobody said whose photograph it is", "name the visit by its key");
              }
              List<String> because = new ArrayList<>(finding.facts());
              because.addAll(worded.capture().facts());
              return Outcome.done(
                  decided(
                      visit,
                      worded.view(),
                      words,
                      worded.said(),
                      worded.capture(),
                      worded.laid(),
                      because));
            });
  }

  /** A person's words of the picture itself, understood and found possible. */
  private record Worded(Understood said, CaptureStatement capture, View view, Laid laid) {}

  private Outcome<Worded> worded(PersonWords words) {
    Understood said = new WordsReader(sources.views(), sources.teeth()).read(words, NameFacts.NONE);
    CaptureStatement capture = CaptureStatement.of(said, facts, sources.declarations());
    List<WaitReason> reasons = new ArrayList<>(said.problems());
    Laid laid = laid(said, capture, !words.says(PhotoFact.VIEW), reasons);
    View view = said.view();
    if (view == null || laid == null || !reasons.isEmpty()) {
      return Outcome.refused(
          reasons.stream().map(WaitReason::sentence).collect(Collectors.joining("; ")),
          reasons.stream().map(WaitReason::advice).distinct().collect(Collectors.joining("; ")));
    }
    return Outcome.done(new Worded(said, capture, view, laid));
  }

  /** What a person's words say of the picture itself, whosever it is. */
  Outcome<Stated> stated(PersonWords words) {
    return worded(words)
        .map(
            worded ->
                new Stated(
                    worded.view(),
                    worded.said().teeth(),
                    worded.capture().mirror(),
                    worded.said().crop(),
                    worded.said().trim(),
                    worded.laid()));
  }

  /** True if it was not taken while the visit lasted, as far as its time says. */
  boolean outside(Visit visit) {
    return !time.missing() && (time.impossible() || !time.within(visit));
  }

  private Assignment.Decided decided(
      Visit visit,
      View view,
      PersonWords words,
      Understood said,
      CaptureStatement capture,
      Laid laid,
      List<String> because) {
    if (sources.visits().hasNamesake(visit.patient())) {
      because.add("another patient in the visit list has the same name");
    }
    because.addAll(laid.because());
    Decision decision =
        new Decision(
            visit,
            view,
            said.teeth(),
            capture.mirror(),
            capture.raw(),
            capture.up(),
            capture.seen(),
            said.crop(),
            said.accessories(),
            said.stage(),
            words.get(PhotoFact.TREATMENT),
            words.get(PhotoFact.NOTE),
            said.trim(),
            said.salvage(),
            words.by().isEmpty() ? sources.by() : words.by(),
            because);
    return new Assignment.Decided(decision, laid);
  }

  private Proposal proposal(
      VisitFinding finding, PersonWords words, Understood said, CaptureStatement capture) {
    Visit visit = finding.visit();
    View view = said.view();
    boolean stated = capture.mirror() != Mirror.UNKNOWN;
    Mirror mirror = stated || view == null ? capture.mirror() : view.usualMirror();
    FactWords known = new FactWords();
    known.put(PhotoFact.VISIT, visit == null ? null : visit.key());
    known.put(PhotoFact.PATIENT, finding.patientId());
    known.view(view);
    known.teeth(said.teeth());
    known.mirror(mirror);
    known.edges(capture.raw(), capture.up(), facts.orientation());
    known.crop(said.crop());
    known.accessories(said.accessories());
    known.stage(said.stage());
    known.put(PhotoFact.TREATMENT, words.get(PhotoFact.TREATMENT));
    known.put(PhotoFact.NOTE, words.get(PhotoFact.NOTE));
    return new Proposal(known.all(), stated);
  }
}
