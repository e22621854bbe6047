package org.vestibule.forward;

import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.TransferSyntax;
import org.vestibule.dicom.net.AeTitle;
import org.vestibule.dicom.net.Association;
import org.vestibule.dicom.net.NetUids;
import org.vestibule.dicom.net.Offer;
import org.vestibule.dicom.net.RemoteEntity;
import org.vestibule.dicom.net.Timeouts;
import org.vestibule.keys.TlsSide;

/** An archive that is spoken with by DICOM's own protocol (PS3.8). */
public final class DicomLine implements Archive {

  /** All questions about a batch may take so many times as long as one answer. */
  private static final int QUESTIONS = 10;

  private final RemoteEntity remote;

  private DicomLine(RemoteEntity remote) {
    this.remote = remote;
  }

  /**
   * The archive that these rules describe; nothing is called yet.
   *
   * @return refused if a title, or a file for TLS, is not as it must be
   */
  public static Outcome<DicomLine> of(DestinationRules rules, Clock clock) {
    if (!(rules.line() instanceof DestinationRules.Dicom line)) {
      throw new IllegalArgumentException(rules.name() + " is not spoken with by DICOM");
    }
    Outcome<Optional<TlsSide>> tls =
        line.tls().isPresent()
            ? line.tls().get().client(clock).map(Optional::of)
            : Outcome.done(Optional.empty());
    Timeouts usual = Timeouts.DEFAULT;
    Timeouts timeouts =
        new Timeouts(
            usual.connect(),
            usual.association(),
            rules.answerWait(),
            usual.silence(),
            usual.release());
    return tls.then(
        side ->
            AeTitle.read(line.called())
                .then(
                    called ->
                        AeTitle.read(line.calling())
                            .map(
                                calling ->
                                    new DicomLine(
                                        new RemoteEntity(
                                            line.host(),
                                            line.port(),
                                            called,
                                            calling,
                                            side,
                                            timeouts)))));
  }

  @Override
  public Outcome<ArchiveSession> open(Set<Form> forms, ReportSink reports) {
    List<Offer> offers = new ArrayList<>();
    offers.add(Offer.ofService(NetUids.STORAGE_COMMITMENT_PUSH));
    offers.add(Offer.ofService(NetUids.STUDY_ROOT_FIND));
    for (Form form : forms) {
      offers.add(new Offer(form.sopClassUid(), List.of(form.transferSyntaxUid())));
      if (form.transferSyntaxUid().equals(TransferSyntax.EXPLICIT_LITTLE_ENDIAN.uid())) {
        offers.add(
            new Offer(form.sopClassUid(), List.of(TransferSyntax.IMPLICIT_LITTLE_ENDIAN.uid())));
      }
    }
    Duration allQuestions = remote.timeouts().answer().multipliedBy(QUESTIONS);
    PendingReports pending = new PendingReports(reports);
    return Association.open(remote, offers, pending::take)
        .map(association -> new DicomSession(association, pending, allQuestions));
  }
}
