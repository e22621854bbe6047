package org.vestibule.forward;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.forward.StoreAnswer.Failed;
import org.vestibule.forward.StoreAnswer.Reach;

/**
 * An archive that does what a test says. What it holds is one object for each UID, as a real one
 * has it, and how often each came.
 */
final class ScriptedArchive implements Archive {

  /** What happens to one object on its way. */
  enum Fate {
    STORED,
    STORED_WITH_WARNING,
    /** The line is cut before the archive has all of it. */
    CUT_BEFORE,
    /** The archive has it, but its answer is lost. */
    CUT_AFTER,
    DISK_FULL,
    NOT_NOW,
    REFUSED
  }

  /** What happens to a report of storage commitment. */
  enum Report {
    AT_ONCE,
    LATER,
    TWICE,
    LOST,
    DENIED,
    OTHER_CLASS,
    NO_SERVICE,
    BROKEN
  }

  final Map<String, Integer> arrivals = new TreeMap<>();
  final List<String> order = new ArrayList<>();
  final Map<String, Instance> holds = new HashMap<>();

  /** What each object's bytes were whenever it came. */
  final Map<String, ContentHash> bytes = new HashMap<>();

  final List<CommitmentReport> late = new ArrayList<>();
  Function<String, Fate> fates = uid -> Fate.STORED;
  Function<String, Report> reports = transaction -> Report.AT_ONCE;
  Function<String, Boolean> shows = uid -> true;
  Function<Integer, Boolean> reachable = call -> true;
  Map<String, String> coerces = Map.of();
  Map<String, String> identifiers = Map.of();

  /** What it answers to the so-manieth question instead of what it shows; null if it shows it. */
  IntFunction<@Nullable PresenceAnswer> questions = number -> null;

  /** What it shows where it was not sent. */
  Map<String, Map<String, String>> elsewhere = Map.of();

  /** True if the line breaks when it is to look elsewhere. */
  boolean breaksElsewhere;

  /** True if it ends the session once it has taken a request for storage commitment. */
  boolean hangsUpOnceAsked;

  /** What it was to look for elsewhere. */
  final List<Sought> sought = new ArrayList<>();

  int opened;
  int asked;

  @Override
  public Outcome<ArchiveSession> open(Set<Form> forms, ReportSink sink) {
    opened++;
    return reachable.apply(opened)
        ? Outcome.done(new Session(forms, sink))
        : Outcome.refused("the archive does not answer", "see whether it runs");
  }

  private final class Session implements ArchiveSession {
    private final Set<Form> forms;
    private final ReportSink sink;
    private final List<CommitmentReport> coming = new ArrayList<>();
    private boolean over;

    Session(Set<Form> forms, ReportSink sink) {
      this.forms = forms;
      this.sink = sink;
    }

    private void mustLive() {
      if (over) {
        throw new AssertionError("a session that is over was used");
      }
    }

    /** An identifier stands for the same bytes each time it comes (PS3.5 section 9). */
    private void neverOverwritten(String uid, Parcel parcel) {
      try (InputStream file = parcel.source().open()) {
        ContentHash now = ContentHash.of(file.readAllBytes());
        ContentHash before = bytes.putIfAbsent(uid, now);
        if (before != null && !before.equals(now)) {
          throw new AssertionError("other bytes came under the identifier of an earlier object");
        }
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    @Override
    public StoreAnswer store(Parcel parcel) {
      mustLive();
      if (!forms.contains(parcel.form())) {
        throw new AssertionError("sent in a form that was not announced");
      }
      String uid = parcel.instance().sopInstanceUid();
      Fate fate = fates.apply(uid);
      if (fate == Fate.STORED || fate == Fate.STORED_WITH_WARNING || fate == Fate.CUT_AFTER) {
        neverOverwritten(uid, parcel);
        arrivals.merge(uid, 1, Integer::sum);
        order.add(uid);
        holds.put(uid, parcel.instance());
      }
      return switch (fate) {
        case STORED -> StoreStatus.answer(0, "");
        case STORED_WITH_WARNING -> StoreStatus.answer(0xB000, "", coerces);
        case DISK_FULL -> StoreStatus.answer(0xA700, "");
        case NOT_NOW -> StoreStatus.answer(0x0110, "");
        case REFUSED -> StoreStatus.answer(0xC123, "");
        case CUT_BEFORE, CUT_AFTER -> {
          over = true;
          yield new Failed(StoreAnswer.NO_STATUS, "the connection broke", Reach.SESSION);
        }
      };
    }

    @Override
    public CommitmentAnswer requestCommitment(String transaction, List<Instance> instances) {
      mustLive();
      CommitmentReport report = report(transaction, instances);
      switch (reports.apply(transaction)) {
        case AT_ONCE -> coming.add(report);
        case TWICE -> {
          coming.add(report);
          coming.add(report);
        }
        case LATER -> late.add(report);
        case LOST -> {}
        case DENIED -> coming.add(denied(transaction, instances, 0x0112));
        case OTHER_CLASS -> coming.add(denied(transaction, instances, 0x0119));
        case NO_SERVICE -> {
          return new CommitmentAnswer.Refused(0x0122, "no such service");
        }
        case BROKEN -> {
          over = true;
          return new CommitmentAnswer.Failed(-1, "the connection broke", true);
        }
      }
      return new CommitmentAnswer.Taken();
    }

    private static CommitmentReport denied(
        String transaction, List<Instance> instances, int reason) {
      return new CommitmentReport(
          transaction, List.of(), Map.of(instances.get(0).sopInstanceUid(), reason));
    }

    private CommitmentReport report(String transaction, List<Instance> instances) {
      List<String> kept = new ArrayList<>();
      Map<String, Integer> failed = new TreeMap<>();
      for (Instance instance : instances) {
        if (holds.containsKey(instance.sopInstanceUid())) {
          kept.add(instance.sopInstanceUid());
        } else {
          failed.put(instance.sopInstanceUid(), 0x0112);
        }
      }
      return new CommitmentReport(transaction, kept, failed);
    }

    @Override
    public void awaitReports(Duration most) {
      over |= hangsUpOnceAsked;
      coming.forEach(sink::take);
      coming.clear();
    }

    @Override
    public PresenceAnswer ask(List<Instance> instances) {
      mustLive();
      asked++;
      PresenceAnswer other = questions.apply(asked);
      if (other != null) {
        over |= other instanceof PresenceAnswer.Failed failed && failed.sessionOver();
        return other;
      }
      Map<String, Map<String, String>> found = new TreeMap<>();
      for (Instance instance : instances) {
        String uid = instance.sopInstanceUid();
        if (holds.containsKey(uid) && shows.apply(uid)) {
          found.put(uid, identifiers);
        }
      }
      return new PresenceAnswer.Answered(found);
    }

    @Override
    public Map<String, Map<String, String>> lookElsewhere(List<Sought> wanted) {
      mustLive();
      sought.addAll(wanted);
      over |= breaksElsewhere;
      return elsewhere;
    }

    @Override
    public boolean isOver() {
      return over;
    }

    @Override
    public void close() {
      over = true;
    }
  }
}
