package org.vestibule.forward;

import java.io.IOException;
import java.io.InputStream;
import java.time.Duration;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.BooleanSupplier;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.forward.StoreAnswer.Failed;
import org.vestibule.forward.StoreAnswer.Reach;

/** Stores and searches over DICOMweb, one request at a time. */
final class WebSession implements ArchiveSession {

  /** A line slower than this counts as silent. */
  private static final long SLOWEST_BYTES_PER_SECOND = 32 << 10;

  /** After so many questions in a row without an answer the others are not asked. */
  private static final int MOST_SILENCES = 3;

  /** All questions about a batch may take so many times as long as one answer. */
  private static final int QUESTIONS = 10;

  /** Why nothing is asked of it while it wants no call. */
  static final String NOT_NOW = "the archive asked not to be called for a while";

  private static final Outcome<Optional<Map<String, String>>> TOLD_TO_WAIT =
      Outcome.refused(NOT_NOW, "the first run after that asks");

  private static final Outcome<Optional<Map<String, String>>> NOT_ASKED =
      Outcome.refused("its answers took too long together", "the next run asks");

  /** RFC 9110 15.5.1, 15.5.4 to 15.5.6, 15.5.15 and 15.6.2. */
  private static final Set<Integer> DOES_NOT_SEARCH = Set.of(400, 403, 404, 405, 414, 501);

  private final WebCall call;
  private final WebRequests requests;
  private final Duration answerWait;
  private final BooleanSupplier toldToWait;

  /**
   * @param toldToWait true while the archive wants no call
   */
  WebSession(WebCall call, WebRequests requests, Duration answerWait, BooleanSupplier toldToWait) {
    this.toldToWait = toldToWait;
    this.call = call;
    this.requests = requests;
    this.answerWait = answerWait;
  }

  @Override
  public StoreAnswer store(Parcel parcel) {
    if (toldToWait.getAsBoolean()) {
      return new Failed(StoreAnswer.NO_STATUS, NOT_NOW, Reach.DESTINATION);
    }
    try (InputStream readable = parcel.source().open()) {
      readable.read();
    } catch (IOException e) {
      return new Failed(
          StoreAnswer.NO_STATUS, "the object's file can't be read here: run verify", Reach.OBJECT);
    }
    Duration most = answerWait.plusSeconds(parcel.sizeBytes() / SLOWEST_BYTES_PER_SECOND);
    WebCall.Result result = call.send(requests.store(parcel, most), most);
    if (result instanceof WebCall.Silence silence) {
      return new Failed(
          StoreAnswer.NO_STATUS,
          silence.words(),
          silence.connected() ? Reach.SESSION : Reach.DESTINATION,
          true);
    }
    return new StoreResponse((WebCall.Answer) result).about(parcel.instance().sopInstanceUid());
  }

  @Override
  public CommitmentAnswer requestCommitment(String transactionUid, List<Instance> instances) {
    return new CommitmentAnswer.Refused(
        StoreAnswer.NO_STATUS, "over DICOMweb nothing but a query is asked for");
  }

  @Override
  public void awaitReports(Duration most) {
    // none can come
  }

  @Override
  public PresenceAnswer ask(List<Instance> instances) {
    Map<String, Map<String, String>> found = new TreeMap<>();
    Set<String> open = new LinkedHashSet<>();
    String trouble = "";
    int silences = 0;
    long end = System.nanoTime() + answerWait.multipliedBy(QUESTIONS).toNanos();
    for (Instance instance : instances) {
      Outcome<Optional<Map<String, String>>> shown =
          silences == MOST_SILENCES || end - System.nanoTime() <= 0 ? NOT_ASKED : shown(instance);
      if (shown instanceof Refused<Optional<Map<String, String>>> refused) {
        open.add(instance.sopInstanceUid());
        trouble = trouble.isEmpty() ? refused.reason() : trouble;
        silences += silences < MOST_SILENCES ? 1 : 0;
      } else {
        silences = 0;
        shown.orThrow().ifPresent(known -> found.put(instance.sopInstanceUid(), known));
      }
    }
    return open.isEmpty()
        ? new PresenceAnswer.Answered(found)
        : new PresenceAnswer.Failed(
            StoreAnswer.NO_STATUS, trouble, silences == MOST_SILENCES, found, open);
  }

  /** Where it was sent; if it is not there, wherever the archive put it. */
  private Outcome<Optional<Map<String, String>>> shown(Instance instance) {
    if (toldToWait.getAsBoolean()) {
      return TOLD_TO_WAIT;
    }
    String place = "/studies/" + instance.studyUid() + "/series/" + instance.seriesUid();
    Outcome<Optional<Map<String, String>>> there = search(place, instance.sopInstanceUid(), false);
    return there instanceof Done<Optional<Map<String, String>>> done && done.value().isEmpty()
        ? search("", instance.sopInstanceUid(), true)
        : there;
  }

  /**
   * One search.
   *
   * @param beyond across studies, which an archive need not do (PS3.18 10.6.1): then it does not
   *     show the object
   */
  private Outcome<Optional<Map<String, String>>> search(String place, String uid, boolean beyond) {
    WebCall.Result result = call.send(requests.search(place, uid, answerWait), answerWait);
    if (result instanceof WebCall.Silence silence) {
      return Outcome.refused(silence.words(), silence.advice());
    }
    WebCall.Answer answer = (WebCall.Answer) result;
    return beyond && DOES_NOT_SEARCH.contains(answer.status())
        ? Outcome.done(Optional.empty())
        : SearchResponse.identifiers(answer, uid);
  }

  @Override
  public void close() {
    // nothing is held open
  }
}
