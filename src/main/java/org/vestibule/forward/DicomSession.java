package org.vestibule.forward;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dicom.Dictionary;
import org.vestibule.dicom.TransferSyntax;
import org.vestibule.dicom.net.Answer;
import org.vestibule.dicom.net.Association;
import org.vestibule.dicom.net.InstanceReference;
import org.vestibule.dicom.net.Offer;
import org.vestibule.dicom.net.Sendable;

/** One association with an archive, in the courier's terms. */
final class DicomSession implements ArchiveSession {

  private static final int HEX = 16;

  private final Association association;
  private final PendingReports reports;
  private final Duration allQuestions;

  /**
   * @param allQuestions how long all questions about one batch of objects may take together
   */
  DicomSession(Association association, PendingReports reports, Duration allQuestions) {
    this.association = association;
    this.reports = reports;
    this.allQuestions = allQuestions;
  }

  @Override
  public StoreAnswer store(Parcel parcel) {
    Outcome<Answer> outcome = sendable(parcel).then(association::store);
    if (outcome instanceof Done<Answer> done) {
      return StoreStatus.answer(done.value().status(), named(done.value()));
    }
    return new StoreAnswer.Failed(
        StoreAnswer.NO_STATUS,
        words(outcome),
        association.isOpen() ? StoreAnswer.Reach.OBJECT : StoreAnswer.Reach.SESSION);
  }

  /** As it lies on the disk, unless that is a note which the archive takes only without its VRs. */
  private Outcome<Sendable> sendable(Parcel parcel) {
    Sendable asItLies = new SentParcel(parcel);
    if (!ImplicitNote.isPossible(parcel)
        || association.takes(Offer.of(asItLies))
        || !association.takes(
            new Offer(asItLies.sopClass(), List.of(TransferSyntax.IMPLICIT_LITTLE_ENDIAN.uid())))) {
      return Outcome.done(asItLies);
    }
    return ImplicitNote.of(parcel);
  }

  /** Which attributes the archive names; its comment is left out, since it may name somebody. */
  private static String named(Answer answer) {
    if (answer.offending().isEmpty()) {
      return "";
    }
    List<String> keywords =
        answer.offending().stream()
            .map(digits -> Dictionary.keyword(Integer.parseUnsignedInt(digits, HEX)))
            .toList();
    return "it names " + String.join(", ", keywords);
  }

  @Override
  public CommitmentAnswer requestCommitment(String transactionUid, List<Instance> instances) {
    reports.asked(transactionUid);
    Outcome<Answer> outcome =
        association.requestCommitment(
            transactionUid,
            instances.stream()
                .map(i -> new InstanceReference(i.sopClassUid(), i.sopInstanceUid()))
                .toList());
    if (outcome instanceof Done<Answer> done && done.value().isDone()) {
      return new CommitmentAnswer.Taken();
    }
    reports.notTaken(transactionUid);
    if (outcome instanceof Done<Answer> done) {
      Answer answer = done.value();
      return answer.again()
          ? new CommitmentAnswer.Failed(answer.status(), answer.sentence(), false)
          : new CommitmentAnswer.Refused(answer.status(), answer.sentence());
    }
    return new CommitmentAnswer.Failed(
        StoreAnswer.NO_STATUS, words(outcome), !association.isOpen());
  }

  @Override
  public void awaitReports(Duration most) {
    long end = System.nanoTime() + most.toNanos();
    while (!reports.isEmpty() && association.isOpen()) {
      long left = end - System.nanoTime();
      if (left <= 0
          || !(association.serveOne(Duration.ofNanos(left)) instanceof Done<Boolean> served)
          || !served.value()) {
        return;
      }
    }
  }

  @Override
  public PresenceAnswer ask(List<Instance> instances) {
    Map<List<String>, List<Instance>> bySeries =
        instances.stream()
            .collect(Collectors.groupingBy(i -> List.of(i.studyUid(), i.seriesUid())));
    PresenceQuery query = new PresenceQuery(association, allQuestions);
    bySeries.values().forEach(query::ask);
    return query.answer();
  }

  /** Where relational queries are granted, that was asked in one question before. */
  @Override
  public Map<String, Map<String, String>> lookElsewhere(List<Sought> sought) {
    if (!association.isOpen() || association.isRelational()) {
      return Map.of();
    }
    return new ElsewhereQuery(association, System.nanoTime() + allQuestions.toNanos()).look(sought);
  }

  @Override
  public boolean isOver() {
    return !association.isOpen();
  }

  private static String words(Outcome<?> refused) {
    return PlainLine.of(((Refused<?>) refused).sentence());
  }

  @Override
  public void close() {
    association.close();
  }
}
