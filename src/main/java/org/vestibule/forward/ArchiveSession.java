package org.vestibule.forward;

import java.time.Duration;
import java.util.List;
import java.util.Map;

/**
 * A connection to an archive. It never throws because of what the archive says or does: trouble is
 * an answer. After an answer that ends the session nothing more is asked of it but to close.
 */
public interface ArchiveSession extends AutoCloseable {

  /** Sends an object (PS3.4 B, PS3.18 10.5) and waits for the answer to it. */
  StoreAnswer store(Parcel parcel);

  /**
   * Asks the archive to take responsibility for these objects (PS3.4 J.3.2).
   *
   * @param transactionUid chosen by the caller, who has it on disk already
   */
  CommitmentAnswer requestCommitment(String transactionUid, List<Instance> instances);

  /**
   * Keeps the session open for reports of storage commitment, which go to the sink it was opened
   * with. Returns when each commitment requested in it was reported, when the session ends, or
   * after this time.
   */
  void awaitReports(Duration most);

  /** Asks which of these the archive can show, at the level of single objects. */
  PresenceAnswer ask(List<Instance> instances);

  /**
   * Looks for objects that it answered well about and did not show, wherever it may have filed them
   * instead. Nothing found means nothing: it may be that it can't be asked so.
   *
   * @return SOP Instance UID to identifiers, as {@link PresenceAnswer.Answered} has them
   */
  default Map<String, Map<String, String>> lookElsewhere(List<Sought> sought) {
    return Map.of();
  }

  /** True if the session can't be used any more, as after looking elsewhere it may be. */
  default boolean isOver() {
    return false;
  }

  /** Ends the session in order if it can be, else at once. */
  @Override
  void close();
}
