package org.vestibule.flow.phone;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Visit;
import org.vestibule.assign.VisitList;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dental.Series;
import org.vestibule.flow.Practice;
import org.vestibule.flow.VisitBook;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.PhoneLinkRow;

/** Opens pages for phones, each for one visit of today, and ends them. */
public final class WayIn {

  private final Practice practice;
  private final Ledger ledger;

  public WayIn(Practice practice) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
  }

  /** The visits for which a page may be opened now, the first one first. */
  public Outcome<List<Visit>> visits() {
    return new VisitBook(practice)
        .all()
        .map(list -> list.visits().stream().filter(this::isToday).toList());
  }

  private LocalDate today() {
    return LocalDate.ofInstant(practice.clock().instant(), practice.settings().zone());
  }

  private boolean isToday(Visit visit) {
    return !today().isBefore(visit.start().toLocalDate())
        && !today().isAfter(visit.end().toLocalDate());
  }

  /**
   * Opens a page for a visit, until its day is over.
   *
   * @param visit its key
   * @param series the views that are to be taken; null for those that the visit list plans
   * @param mark the hash of the page's secret, which is not known here
   * @param by who opens it: the visit is this person's word
   */
  public Outcome<PhoneLinkRow> open(String visit, @Nullable Series series, String mark, String by) {
    Outcome<VisitList> all = new VisitBook(practice).all();
    if (!(all instanceof Done<VisitList> list)) {
      return ((Refused<VisitList>) all).as();
    }
    Optional<Visit> found = list.value().byKey(visit);
    if (found.isEmpty()) {
      return Outcome.refused(
          "no visit of this key is in the visit list",
          "check the key, or enter the visit with visits add");
    }
    if (!isToday(found.get())) {
      return Outcome.refused(
          "the visit is not one of today",
          "open the page on the visit's day; photographs of another day go into the inbox");
    }
    Series wanted = series == null ? list.value().plan(found.get()).series() : series;
    return Outcome.done(
        ledger.together(
            () -> {
              String words = wanted == null ? "" : wanted.words();
              PhoneLinkRow link =
                  ledger.phoneLinks().open(mark, found.get().key(), words, by, end(found.get()));
              ledger
                  .events()
                  .add(by, "phone's page opened", null, link.number() + " " + link.visit());
              return link;
            }));
  }

  private Instant end(Visit visit) {
    return visit
        .end()
        .toLocalDate()
        .plusDays(1)
        .atStartOfDay(practice.settings().zone())
        .toInstant();
  }

  /** The page with this secret, if phones may use it now. */
  public Optional<PhoneLinkRow> find(String mark) {
    return ledger.phoneLinks().find(mark).filter(this::isOpen);
  }

  /** The page with this number, if phones may use it now. */
  public Optional<PhoneLinkRow> find(int number) {
    return ledger.phoneLinks().find(number).filter(this::isOpen);
  }

  private boolean isOpen(PhoneLinkRow link) {
    return link.isOpen(practice.clock().instant());
  }

  /** All pages that phones may use now, the newest first. */
  public List<PhoneLinkRow> open() {
    return ledger.phoneLinks().open(practice.clock().instant()).stream()
        .filter(this::isOpen)
        .toList();
  }

  /** Ends a page at once; false if there is none of this number, or it was ended before. */
  public boolean end(int number, String by) {
    return ledger.together(
        () -> {
          boolean ended =
              ledger.phoneLinks().find(number).isPresent() && ledger.phoneLinks().end(number, by);
          if (ended) {
            ledger.events().add(by, "phone's page ended", null, String.valueOf(number));
          }
          return ended;
        });
  }
}
