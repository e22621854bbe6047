package org.vestibule.flow.delivering;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.vestibule.audit.AuditOutcome;
import org.vestibule.audit.AuditPeer;
import org.vestibule.base.Outcome;
import org.vestibule.flow.Auditing;
import org.vestibule.forward.Archive;
import org.vestibule.forward.ArchiveSession;
import org.vestibule.forward.CommitmentAnswer;
import org.vestibule.forward.Instance;
import org.vestibule.forward.Parcel;
import org.vestibule.forward.PresenceAnswer;
import org.vestibule.forward.ReportSink;
import org.vestibule.forward.Sought;
import org.vestibule.forward.StoreAnswer;

/**
 * An archive whose sessions are told to the site's audit repository: that the transfer of a study
 * begins, and at the session's end what was taken of it and what was not.
 */
final class AuditedArchive implements Archive {

  private final Archive archive;
  private final Auditing audit;
  private final AuditPeer peer;

  AuditedArchive(Archive archive, Auditing audit, AuditPeer peer) {
    this.archive = archive;
    this.audit = audit;
    this.peer = peer;
  }

  @Override
  public Outcome<ArchiveSession> open(Set<Form> forms, ReportSink reports) {
    Outcome<ArchiveSession> opened = archive.open(forms, reports);
    return audit.trail().isOn() ? opened.map(Session::new) : opened;
  }

  @Override
  public Optional<Instant> notBefore() {
    return archive.notBefore();
  }

  private final class Session implements ArchiveSession {

    private final ArchiveSession session;
    private final Map<String, TransferTally> studies = new LinkedHashMap<>();

    Session(ArchiveSession session) {
      this.session = session;
    }

    @Override
    public StoreAnswer store(Parcel parcel) {
      Instance instance = parcel.instance();
      TransferTally tally = studies.get(instance.studyUid());
      if (tally == null) {
        tally = new TransferTally();
        studies.put(instance.studyUid(), tally);
        tell(() -> audit.transferBegins(peer, instance.sopInstanceUid()));
      }
      StoreAnswer answer = session.store(parcel);
      tally.add(instance, answer);
      return answer;
    }

    @Override
    public CommitmentAnswer requestCommitment(String transactionUid, List<Instance> instances) {
      return session.requestCommitment(transactionUid, instances);
    }

    @Override
    public void awaitReports(Duration most) {
      session.awaitReports(most);
    }

    @Override
    public PresenceAnswer ask(List<Instance> instances) {
      return session.ask(instances);
    }

    @Override
    public Map<String, Map<String, String>> lookElsewhere(List<Sought> sought) {
      return session.lookElsewhere(sought);
    }

    @Override
    public boolean isOver() {
      return session.isOver();
    }

    @Override
    public void close() {
      try {
        session.close();
      } finally {
        studies.values().forEach(this::ended);
        studies.clear();
      }
    }

    private void ended(TransferTally tally) {
      tell(() -> audit.transferred(peer, tally.taken(), AuditOutcome.SUCCESS, ""));
      tell(
          () ->
              audit.transferred(
                  peer,
                  tally.notTaken(),
                  tally.isFinal() ? AuditOutcome.SERIOUS_FAILURE : AuditOutcome.MINOR_FAILURE,
                  tally.words()));
    }
  }

  @FunctionalInterface
  private interface Message {
    void record() throws IOException;
  }

  /** A disk that can't take a message ends the run, like any other disk that fails. */
  private static void tell(Message message) {
    try {
      message.record();
    } catch (IOException e) {
      throw new UncheckedIOException("an audit message could not be written", e);
    }
  }
}
