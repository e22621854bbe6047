package org.vestibule.forward;

import java.io.IOException;
import java.io.InputStream;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.forward.StoreAnswer.Failed;
import org.vestibule.forward.StoreAnswer.Reach;

/** Stores and searches over DICOMweb, one request at a time. */
final class WebSession implements ArchiveSession {

  /** A line slower than this counts as silent. */
  private static final long SLOWEST_BYTES_PER_SECOND = 32 << 10;

  private final WebCall call;
  private final WebRequests requests;
  private final Duration answerWait;

  WebSession(WebCall call, WebRequests requests, Duration answerWait) {
    this.call = call;
    this.requests = requests;
    this.answerWait = answerWait;
  }

  @Override
  public StoreAnswer store(Parcel parcel) {
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
    for (Instance instance : instances) {
      Outcome<Optional<Map<String, String>>> shown = shown(instance);
      if (shown instanceof Refused<Optional<Map<String, String>>> refused) {
        return new PresenceAnswer.Failed(StoreAnswer.NO_STATUS, refused.reason(), true);
      }
      shown.orThrow().ifPresent(known -> found.put(instance.sopInstanceUid(), known));
    }
    return new PresenceAnswer.Answered(found);
  }

  /** Where it was sent; if it is not there, wherever the archive put it. */
  private Outcome<Optional<Map<String, String>>> shown(Instance instance) {
    String place = "/studies/" + instance.studyUid() + "/series/" + instance.seriesUid();
    Outcome<Optional<Map<String, String>>> there = search(place, instance.sopInstanceUid());
    return there instanceof Done<Optional<Map<String, String>>> done && done.value().isEmpty()
        ? anywhere(instance)
        : there;
  }

  /** An archive need not search across studies; then it does not show the object. */
  private Outcome<Optional<Map<String, String>>> anywhere(Instance instance) {
    Outcome<Optional<Map<String, String>>> found = search("", instance.sopInstanceUid());
    return found instanceof Done<Optional<Map<String, String>>>
        ? found
        : Outcome.done(Optional.empty());
  }

  private Outcome<Optional<Map<String, String>>> search(String place, String uid) {
    WebCall.Result result = call.send(requests.search(place, uid, answerWait), answerWait);
    if (result instanceof WebCall.Silence silence) {
      return Outcome.refused(silence.words(), silence.advice());
    }
    return SearchResponse.identifiers((WebCall.Answer) result, uid);
  }

  @Override
  public void close() {
    // nothing is held open
  }
}
