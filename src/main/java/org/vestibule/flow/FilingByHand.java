package org.vestibule.flow;

import java.io.IOException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.vestibule.assign.Decision;
import org.vestibule.assign.PersonWords;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Kind;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.store.ledger.DeliveryRow;
import org.vestibule.store.ledger.DeliveryState;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.Ledger;

/**
 * Files and corrects what a person decided over a preview: only as the preview showed it, and only
 * if every doubt that it raised was answered. Several people may do so at once.
 */
public final class FilingByHand {

  /** Another person's filing takes a moment; a whole run takes longer than anybody waits. */
  private static final int TRIES = 20;

  private static final long PAUSE_MILLIS = 150;

  /**
   * What a person decided.
   *
   * @param words about the photograph
   * @param previewed the Patient Orientation that the preview showed
   * @param answered the doubts that the preview raised and the person answered
   */
  public record Decided(PersonWords words, String previewed, Set<Doubt.Kind> answered) {
    public Decided {
      answered = Set.copyOf(answered);
    }
  }

  /** By whom a photograph was filed, and when. */
  public record FiledBy(String person, Instant at) {}

  private final Practice practice;
  private final Ledger ledger;

  public FilingByHand(Practice practice) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
  }

  /** Files one that waits. */
  public Outcome<FiledPhoto> file(ContentHash photo, Decided decided) throws IOException {
    return checked(
        photo, decided, () -> new Corrections(practice).file(id(photo), decided.words()));
  }

  /** Corrects one that is filed, if it is filed as it was looked at. */
  public Outcome<FiledPhoto> move(ContentHash photo, Decided decided, Why why, LookedAt seen)
      throws IOException {
    Optional<Refused<FiledPhoto>> another = seen.objection(photo, practice);
    return another.isPresent()
        ? another.get()
        : checked(
            photo,
            decided,
            () -> new Corrections(practice).move(id(photo), decided.words(), why, seen));
  }

  /** Takes back what a person filed, so that it waits again, if it is filed as it was looked at. */
  public Outcome<String> takeBack(ContentHash photo, String by, Why why, LookedAt seen)
      throws IOException {
    return patiently(() -> new Corrections(practice).takeBack(id(photo), by, why, seen));
  }

  /** Takes one out of the record, or off the list of what waits, if it stands as looked at. */
  public Outcome<String> reject(ContentHash photo, String by, Why why, LookedAt seen)
      throws IOException {
    return patiently(() -> new Corrections(practice).reject(id(photo), by, why, seen));
  }

  /** What happened to a photograph since it was looked at; empty if nothing did. */
  public Optional<Meanwhile> since(ContentHash photo, LookedAt seen) {
    return seen.since(photo, ledger);
  }

  /** What the ledger calls the decision by which it is filed now; empty if it is not. */
  public String decision(ContentHash photo) {
    return CurrentDecision.id(photo, ledger).orElse("");
  }

  /** By whom it is filed now; empty if it is not. */
  public Optional<FiledBy> filedBy(ContentHash photo) {
    return CurrentDecision.row(photo, ledger)
        .map(row -> new FiledBy(row.decidedBy(), row.decidedAt()));
  }

  /** When a photograph was taken, on the camera's clock; empty if its file does not say. */
  public Optional<LocalDateTime> takenAt(ContentHash photo) {
    return Optional.ofNullable(new SourceFiles(practice).facts(photo).takenAt());
  }

  /** What is filed of it, as a person would say it, by word of the fact; empty if nothing is. */
  public Map<String, String> said(ContentHash photo) {
    return CurrentDecision.of(photo, ledger)
        .flatMap(
            known ->
                known.toDecision(practice.views()) instanceof Done<Decision> done
                    ? Optional.of(done.value())
                    : Optional.empty())
        .map(
            decision ->
                ProposalWords.of(decision, new SourceFiles(practice).facts(photo).orientation()))
        .orElse(Map.of());
  }

  /** True if a person filed it, so that the filing can be taken back. */
  public boolean canBeTakenBack(ContentHash photo) {
    return CurrentDecision.row(photo, ledger)
        .filter(row -> row.source().equals("person"))
        .isPresent();
  }

  /** The destinations that have confirmed what is filed of it now, or may have it. */
  public List<String> deliveredTo(ContentHash photo) {
    Set<Integer> revisions =
        ledger.intents().current(photo).stream().map(Intent::revision).collect(Collectors.toSet());
    return ledger.deliveries().of(photo).stream()
        .filter(row -> !row.note() && revisions.contains(row.revision()))
        .filter(row -> row.state() == DeliveryState.CONFIRMED || row.perhapsThere())
        .map(DeliveryRow::destination)
        .distinct()
        .toList();
  }

  private String id(ContentHash photo) {
    return practice.store().ids().of(photo);
  }

  private Outcome<FiledPhoto> checked(ContentHash photo, Decided decided, Step<FiledPhoto> step)
      throws IOException {
    Outcome<FilingPreview.Look> look = new FilingPreview(practice).look(photo, decided.words());
    if (!(look instanceof Done<FilingPreview.Look> seen)) {
      return ((Refused<FilingPreview.Look>) look).as();
    }
    String now = seen.value().stated().laid().shown().text();
    if (!now.equals(decided.previewed())) {
      return Outcome.refused(
          "it would now be shown as " + now + ", which is not what the preview showed",
          "look at the preview again, then file it");
    }
    boolean open =
        seen.value().doubts().stream()
            .anyMatch(doubt -> !decided.answered().contains(doubt.kind()));
    return open
        ? Outcome.refused(
            "something known of this photograph speaks against what was said of it",
            "look at the preview, and say that it is right all the same if it is")
        : patiently(step);
  }

  @FunctionalInterface
  private interface Step<T> {
    Outcome<T> take() throws IOException;
  }

  /** Waits a little while another filing is at work. */
  private static <T> Outcome<T> patiently(Step<T> step) throws IOException {
    Outcome<T> outcome = step.take();
    for (int tries = 1; tries < TRIES && isBusy(outcome); tries++) {
      try {
        Thread.sleep(PAUSE_MILLIS);
      } catch (InterruptedException stopped) {
        Thread.currentThread().interrupt();
        return outcome;
      }
      outcome = step.take();
    }
    return outcome;
  }

  private static boolean isBusy(Outcome<?> outcome) {
    return outcome instanceof Refused<?> refused && refused.kind() == Kind.BUSY;
  }
}
