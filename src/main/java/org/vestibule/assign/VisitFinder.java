package org.vestibule.assign;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.vestibule.assign.WaitReason.Kind;
import org.vestibule.base.Outcome;

/**
 * Finds the visit of one photograph from a person's row, its names and its time. Two independent
 * facts or a person's word make it known; one fact proposes; contradictions wait.
 */
final class VisitFinder {

  /** How far outside a visit's window a person's row may place a photograph without more ado. */
  static final Duration TOLERANCE = Duration.ofMinutes(15);

  private static final String FILE_IT = "look whose it is and file it by hand";

  private final VisitList list;
  private final boolean oneExport;
  private final PersonWords words;
  private final NameFacts names;
  private final PhotoTime time;
  private final Sorted sorted;
  private final VisitFinding finding = new VisitFinding();

  VisitFinder(
      VisitList list,
      boolean oneExport,
      PersonWords words,
      NameFacts names,
      PhotoTime time,
      Sorted sorted) {
    this.list = list;
    this.oneExport = oneExport;
    this.words = words;
    this.names = names;
    this.time = time;
    this.sorted = sorted;
  }

  VisitFinding find() {
    if (time.impossible()) {
      finding.waits(
          Kind.TIME, time.clock().words() + ", so it can't be compared with the visits", FILE_IT);
    }
    if (names.unclear()) {
      finding.waits(
          Kind.UNKNOWN_WORD,
          "its folder or file name can be read in several ways",
          "rename it, or make the name patterns in the settings stricter");
    }
    if (words.says(PhotoFact.VISIT)) {
      rowNamesVisit();
    } else if (words.says(PhotoFact.PATIENT)) {
      rowNamesPatient();
    } else if (names.namesVisit()) {
      namesAlone();
    } else if (!names.unclear()) {
      cards();
    }
    namesDate();
    return finding;
  }

  /** Cards, where no row and no name says anything. */
  private void cards() {
    Visit visit = sorted.visit();
    if (sorted.settled() && visit != null) {
      byCards(visit);
    } else if (visit != null) {
      finding.propose(visit);
      finding.waits(sorted.reasons());
    } else if (sorted.reasons().isEmpty()) {
      timeAlone();
    } else {
      List<Visit> holding = time.isFact() ? holdingAny() : List.of();
      boolean only = sorted.reasons().stream().allMatch(each -> each.kind() == Kind.CARD_ALONE);
      if (only && holding.size() == 1) {
        finding.propose(holding.get(0));
      }
      finding.waits(sorted.reasons());
    }
  }

  private List<Visit> holdingAny() {
    return list.visits().stream().filter(time::within).toList();
  }

  private void byCards(Visit visit) {
    finding.known(visit, sorted.facts().get(0));
    sorted.facts().stream().skip(1).forEach(finding::fact);
  }

  /** What the cards have against a visit that a row or a name makes known. */
  private void cardsAgree(Visit visit) {
    Visit other = sorted.between();
    if (other == null) {
      return;
    }
    if (other.key().equalsIgnoreCase(visit.key())) {
      finding.fact("the cards before and after it say the same");
    } else {
      finding.waits(
          Kind.CONTRADICTION,
          "the cards before and after it are those of another visit than its row or its name says",
          FILE_IT);
    }
  }

  /** True, with the reason, if the list and the record disagree about what was named. */
  private boolean disputed(Optional<Disputed> dispute) {
    dispute.ifPresent(
        against -> finding.waits(Kind.CONTRADICTION, against.sentence(), against.advice()));
    return dispute.isPresent();
  }

  private void rowNamesVisit() {
    if (disputed(list.dispute(words.get(PhotoFact.VISIT)))) {
      return;
    }
    Visit visit = list.byKey(words.get(PhotoFact.VISIT)).orElse(null);
    if (visit == null) {
      finding.waits(
          Kind.UNKNOWN_WORD,
          source() + " a visit that is not in the visit list",
          words.phone() == null ? "correct the row, or enter the visit" : "enter the visit");
      return;
    }
    finding.known(
        visit,
        words.phone() == null
            ? "a person's row names the visit"
            : "it came by a phone's page that a person opened for the visit");
    if (words.says(PhotoFact.PATIENT) && !isOf(visit, words.get(PhotoFact.PATIENT))) {
      finding.waits(
          Kind.CONTRADICTION,
          "its row names a visit and a patient that don't belong together",
          "correct the row");
    }
    namesAgree(visit);
    timeAgrees(visit);
    cardsAgree(visit);
  }

  private void rowNamesPatient() {
    if (disputed(list.disputeOfPatient(words.get(PhotoFact.PATIENT)))) {
      return;
    }
    List<Visit> visits = list.ofPatient(words.get(PhotoFact.PATIENT));
    if (visits.isEmpty() && list.knowsWithZeros(words.get(PhotoFact.PATIENT))) {
      finding.waits(
          Kind.UNKNOWN_WORD,
          "column patient: its number is one of the visit list but for leading zeros, which a"
              + " spreadsheet probably dropped",
          "format the column as text and enter the number again");
      return;
    }
    if (!onePatient(visits, "its row")) {
      return;
    }
    finding.proposePatient(visits.get(0).patient());
    List<Visit> holding = time.isFact() ? visits.stream().filter(time::within).toList() : List.of();
    if (holding.size() == 1) {
      Visit visit = holding.get(0);
      finding.known(visit, "a person's row names the patient");
      finding.fact("taken during that patient's visit");
      namesAgree(visit);
      cardsAgree(visit);
      return;
    }
    finding.waits(
        time.isFact() ? Kind.NO_VISIT : Kind.TIME,
        "its row names a patient, but "
            + (time.isFact()
                ? holding.isEmpty()
                    ? "its time lies in none of that patient's visits"
                    : "its time lies in several of that patient's visits"
                : time.clock().words()),
        "name the visit in the row");
    if (names.namesVisit() && visits.stream().noneMatch(this::namesFit)) {
      finding.waits(
          Kind.CONTRADICTION,
          "its row names another patient than its folder or file name",
          FILE_IT);
    }
  }

  private void namesAlone() {
    boolean byKey = !names.get("visit").isEmpty();
    if (disputed(
        byKey ? list.dispute(names.get("visit")) : list.disputeOfPatient(names.get("patient")))) {
      return;
    }
    List<Visit> visits =
        byKey
            ? list.byKey(names.get("visit")).stream().toList()
            : list.ofPatient(names.get("patient"));
    if (!onePatient(visits, "its folder or file name")) {
      return;
    }
    finding.proposePatient(visits.get(0).patient());
    if (!visits.stream().allMatch(this::namesFit)) {
      finding.waits(
          Kind.CONTRADICTION,
          "its folder or file name names a visit and a patient that don't belong together",
          FILE_IT);
      return;
    }
    List<Visit> holding = visits.stream().filter(time::within).toList();
    if (!time.isFact() || holding.size() != 1) {
      noSecondFact(holding);
      return;
    }
    Visit visit = holding.get(0);
    cardsAgree(visit);
    if (oneExport && sorted.settled()) {
      byCards(visit);
      return;
    }
    if (oneExport) {
      finding.propose(visit);
      finding.waits(
          Kind.ONE_FACT,
          "its folder or file name and the visit list come from one program, so they are one fact",
          "look whether the proposal is right and file it by hand, or give it a row in the manifest");
      return;
    }
    if (othersThen(visit)) {
      finding.propose(visit);
      finding.waits(
          Kind.ONE_FACT,
          "another patient has a visit at the same time, so the time does not confirm its folder or"
              + " file name",
          "look whether the proposal is right and file it by hand, or give it a row in the manifest");
      return;
    }
    finding.known(visit, "its folder or file name names the patient or visit");
    finding.fact("taken during that visit");
  }

  /** True if the time fits another patient as well; cards that settle the visit tell them apart. */
  private boolean othersThen(Visit visit) {
    Visit byCards = sorted.settled() ? sorted.visit() : null;
    boolean apart = byCards != null && byCards.key().equalsIgnoreCase(visit.key());
    return !apart
        && Stream.concat(list.visits().stream(), list.disputed().stream().map(Disputed::visit))
            .filter(other -> !VisitsTogether.sameNumber(other.patient(), visit.patient()))
            .anyMatch(time::within);
  }

  private void noSecondFact(List<Visit> holding) {
    if (!time.isFact()) {
      finding.waits(
          Kind.TIME,
          "its folder or file name points to a patient or visit, but " + time.clock().words(),
          FILE_IT);
    } else if (holding.isEmpty()) {
      finding.waits(
          Kind.CONTRADICTION,
          "its time lies outside the visits that its folder or file name points to",
          "check the phone's clock and the folder; then file it by hand");
    } else {
      finding.waits(
          Kind.NO_VISIT,
          "its time lies in several visits of the patient that its folder or file name names",
          FILE_IT);
    }
  }

  private void timeAlone() {
    List<Visit> holding =
        time.isFact() ? list.visits().stream().filter(time::within).toList() : List.of();
    if (holding.size() == 1) {
      finding.propose(holding.get(0));
      finding.waits(
          Kind.ONE_FACT,
          "only its time points to a visit",
          "look whether the proposal is right and file it by hand, or give it a row in the manifest");
      return;
    }
    String found =
        !time.isFact()
            ? time.clock().words()
            : holding.isEmpty() ? "its time lies in no visit" : "its time lies in several visits";
    finding.waits(
        Kind.NO_VISIT,
        "nobody said whose it is, and " + found,
        "name the visit in the manifest, or file it by hand");
  }

  private boolean onePatient(List<Visit> visits, String source) {
    if (visits.isEmpty()) {
      finding.waits(
          Kind.UNKNOWN_WORD,
          source + " names a patient or visit that is not in the visit list",
          "check the number, leading zeros included, or enter the visit");
      return false;
    }
    if (!VisitsTogether.onePatient(visits)) {
      finding.waits(
          Kind.NO_VISIT,
          source + " gives a number that two issuers gave to different patients",
          "name the visit instead");
      return false;
    }
    return true;
  }

  private void namesAgree(Visit visit) {
    if (!namesFit(visit)) {
      finding.waits(
          Kind.CONTRADICTION,
          words.phone() == null
              ? "its row names another patient or visit than its folder or file name"
              : "its phone's page was opened for another visit than its file name says",
          "find out which is right, then correct the row or move the file");
    } else if (names.namesVisit()) {
      finding.fact("its folder or file name says the same");
    }
  }

  private boolean namesFit(Visit visit) {
    String patient = names.get("patient");
    String key = names.get("visit");
    return (patient.isEmpty() || isOf(visit, patient))
        && (key.isEmpty() || visit.key().equalsIgnoreCase(key));
  }

  private void timeAgrees(Visit visit) {
    PhoneStay phone = words.phone();
    if (time.missing()) {
      finding.fact("the photograph has no time to compare with the visit");
    } else if (time.within(visit)) {
      finding.fact("taken during the visit");
    } else if (phone != null && phone.holds(time)) {
      finding.fact("taken while the phone's page was open for the visit");
    } else if (time.within(visit, TOLERANCE) && list.visits().stream().noneMatch(time::within)) {
      finding.fact("taken within " + TOLERANCE.toMinutes() + " minutes of the visit");
    } else if (!time.impossible()) {
      finding.waits(
          Kind.CONTRADICTION,
          "its time lies outside the visit that " + source(),
          words.phone() == null
              ? "check the row, the visit's times and the phone's clock; if the row is right, file"
                  + " it by hand"
              : "it may be an older photograph of the roll: look whose it is and file it by hand");
    }
  }

  /** Who named the visit, as a sentence begins or ends. */
  private String source() {
    return words.phone() == null ? "its row names" : "its phone's page was opened for";
  }

  private void namesDate() {
    String text = names.get("date");
    if (text.isEmpty()) {
      return;
    }
    if (!(CalendarText.date(text) instanceof Outcome.Done<LocalDate> date)) {
      finding.waits(
          Kind.UNKNOWN_WORD,
          "its folder or file name has something else where a date is expected",
          "write dates in names as 2026-03-11");
      return;
    }
    Visit visit = finding.visit();
    boolean otherDay = time.isFact() && !time.readings().get(0).toLocalDate().equals(date.value());
    boolean otherVisit =
        visit != null
            && (date.value().isBefore(visit.start().toLocalDate())
                || date.value().isAfter(visit.end().toLocalDate()));
    if (otherDay || otherVisit) {
      finding.waits(
          Kind.CONTRADICTION,
          "the date in its folder or file name is not that of its "
              + (otherDay ? "capture" : "visit"),
          "check the phone's clock and the folder; then file it by hand");
    }
  }

  private static boolean isOf(Visit visit, String patientId) {
    return visit.patient().id().equalsIgnoreCase(patientId);
  }
}
