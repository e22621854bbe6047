package org.vestibule.flow;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.vestibule.assign.Completeness;
import org.vestibule.assign.Decision;
import org.vestibule.assign.TakenView;
import org.vestibule.assign.Visit;
import org.vestibule.assign.VisitList;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome.Done;
import org.vestibule.dental.Series;
import org.vestibule.store.ledger.Ledger;

/** Which views the visits' series still lack, or have more than once, by what is filed. */
public final class SeriesGaps {

  private final Practice practice;
  private final Ledger ledger;
  private final PhotoMarks marks;

  public SeriesGaps(Practice practice) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
    this.marks = new PhotoMarks(practice);
  }

  /**
   * A sentence for each visit that names its series, has a photograph, and is not as the series
   * wants it; it names the visit by its key.
   */
  public List<String> sentences(VisitList visits) {
    List<String> sentences = new ArrayList<>();
    for (Visit visit : visits.visits()) {
      Series series = visits.plan(visit).series();
      if (series == null) {
        continue;
      }
      List<TakenView> taken = taken(visit);
      Completeness found = Completeness.of(series, taken);
      if (!taken.isEmpty() && !(found.isComplete() && found.doubled().isEmpty())) {
        sentences.add("visit " + visit.key() + ", " + found.words());
      }
    }
    return sentences;
  }

  /**
   * What a visit's series lacks or has more than once; empty if the visit names no series.
   *
   * @param also what is about to be filed under the visit
   */
  public Optional<Completeness> of(Visit visit, VisitList visits, List<TakenView> also) {
    Series series = visits.plan(visit).series();
    return series == null ? Optional.empty() : Optional.of(of(visit, series, also));
  }

  /**
   * What a visit lacks of a series or has more than once.
   *
   * @param also what is about to be filed under the visit
   */
  public Completeness of(Visit visit, Series series, List<TakenView> also) {
    List<TakenView> taken = taken(visit);
    taken.addAll(also);
    return Completeness.of(series, taken);
  }

  private List<TakenView> taken(Visit visit) {
    List<TakenView> taken = new ArrayList<>();
    for (ContentHash hash : marks.everUnder(visit.key())) {
      current(hash)
          .filter(decision -> decision.visit().key().equals(visit.key()))
          .ifPresent(decision -> taken.add(TakenView.of(decision)));
    }
    return taken;
  }

  private Optional<Decision> current(ContentHash hash) {
    return CurrentDecision.of(hash, ledger)
        .flatMap(
            known ->
                known.toDecision(practice.views()) instanceof Done<Decision> done
                    ? Optional.of(done.value())
                    : Optional.empty());
  }
}
