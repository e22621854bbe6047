package org.vestibule.flow;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.base.Turn;
import org.vestibule.card.CardSighting;
import org.vestibule.intake.Photo;

/**
 * What was seen of a roll's photographs when they were looked at for cards, handed on to whoever
 * files them in the same run.
 */
final class FirstSights {

  /** Three quarters are for JPEG work, the rest for all else. */
  private static final int SHARE_OF_MEMORY = 16;

  private final Map<ContentHash, FirstSight> sights = new HashMap<>();
  private final Set<ContentHash> recorded = new HashSet<>();
  private final Map<ContentHash, byte[]> atHand = new HashMap<>();
  private final long mostHeld = Runtime.getRuntime().maxMemory() / SHARE_OF_MEMORY;
  private long held;

  /**
   * What there is to see of cards. A picture that can't be read shows one that can't be read.
   *
   * @param bytes the photograph's
   */
  CardSighting look(Photo photo, byte[] bytes) {
    Outcome<FirstSight.WithCard> seen;
    try {
      boolean turned = Turn.asShown(photo.facts().orientation()) != Turn.NONE;
      seen = FirstSight.withCard(bytes, photo.structure(), turned);
    } catch (RuntimeException | StackOverflowError | OutOfMemoryError failure) {
      // One photograph must not end the run; it counts as one that may show a card.
      return CardSighting.Refused.unopened(
          "the program failed when it looked for a card ("
              + failure.getClass().getSimpleName()
              + ")",
          "please report this; the photograph can be filed by hand");
    }
    if (seen instanceof Done<FirstSight.WithCard> done) {
      hold(photo.arrival().hash(), bytes);
      sights.put(photo.arrival().hash(), done.value().sight());
      return done.value().card();
    }
    return CardSighting.Refused.unopened(
        ((Refused<FirstSight.WithCard>) seen).reason(),
        ((Refused<FirstSight.WithCard>) seen).advice());
  }

  /** What was seen of a photograph in this run; nothing if nobody looked. */
  FirstSight of(ContentHash hash) {
    return sights.getOrDefault(hash, FirstSight.NONE);
  }

  private void hold(ContentHash hash, byte[] bytes) {
    if (bytes.length <= mostHeld - held) {
      held += bytes.length;
      atHand.put(hash, bytes);
    }
  }

  /**
   * A photograph's bytes, for the last time: those that were looked at, as far as memory allowed to
   * keep them, else the file's, which must be the same.
   */
  Outcome<byte[]> bytes(Photo photo) {
    byte[] kept = atHand.remove(photo.arrival().hash());
    if (kept == null) {
      return photo.bytes();
    }
    held -= kept.length;
    return Outcome.done(kept);
  }

  /** Notes that the ledger knows of this photograph's file as it lies now. */
  void recorded(ContentHash hash) {
    recorded.add(hash);
  }

  /** True if the ledger knows of this photograph's file as it lies now. */
  boolean isRecorded(ContentHash hash) {
    return recorded.contains(hash);
  }
}
