package org.vestibule.flow;

import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Turn;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.jpeg.TranscodePlan;
import org.vestibule.jpeg.Transcoded;
import org.vestibule.jpeg.Transcoder;

/**
 * Finds out whether a file is the source of a photograph that was entered again from its object, so
 * that it is not filed twice: turned in one of the eight ways, its picture has the very bytes that
 * the object's frame has. Costs nothing where nothing was ever restored.
 */
final class RestoredTwins {

  private final Practice practice;
  private final List<ContentHash> restored;

  RestoredTwins(Practice practice) {
    this.practice = practice;
    this.restored = new PhotoMarks(practice).restored();
  }

  /** True if nothing was ever entered again from its object. */
  boolean none() {
    return restored.isEmpty();
  }

  /** The photograph that was restored from the object which this file became once. */
  Optional<ContentHash> of(ContentHash hash, CaptureFacts facts, byte[] file) {
    Set<ContentHash> perhaps = perhaps(hash, facts.takenAt());
    if (perhaps.isEmpty()) {
      return Optional.empty();
    }
    for (Turn turn : Turn.values()) {
      Outcome<Transcoded> turned = Transcoder.transcode(file, new TranscodePlan(turn, null, true));
      if (turned instanceof Done<Transcoded> done) {
        ContentHash picture = ContentHash.of(done.value().bytes());
        if (perhaps.contains(picture)) {
          return Optional.of(picture);
        }
      }
    }
    return Optional.empty();
  }

  /** Those that were not taken in another second. */
  private Set<ContentHash> perhaps(ContentHash hash, @Nullable LocalDateTime taken) {
    Set<ContentHash> perhaps = new HashSet<>();
    SourceFiles sources = new SourceFiles(practice);
    for (ContentHash one : restored) {
      LocalDateTime other = sources.facts(one).takenAt();
      boolean sameSecond =
          taken == null
              || other == null
              || taken
                  .truncatedTo(ChronoUnit.SECONDS)
                  .equals(other.truncatedTo(ChronoUnit.SECONDS));
      if (sameSecond && !one.equals(hash)) {
        perhaps.add(one);
      }
    }
    return perhaps;
  }
}
