package org.vestibule.assign;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;
import org.vestibule.card.CardSighting;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.LeftOut;
import org.vestibule.intake.LeftOutKind;
import org.vestibule.intake.Photo;

/**
 * A photograph that has a place in the order of its phone: of this roll, or seen by an earlier run.
 *
 * @param name path below the inbox, with forward slashes
 * @param hash of its bytes; null if they were not read
 * @param facts what its camera wrote
 * @param sighting what a look for cards saw in it
 * @param filedVisit key of the visit it is filed under; empty if it is not filed
 */
public record Seen(
    String name,
    @Nullable ContentHash hash,
    CaptureFacts facts,
    CardSighting sighting,
    String filedVisit) {

  /** A photograph of this roll, filed under no visit yet. */
  public static Seen of(Photo photo, CardSighting sighting) {
    return new Seen(photo.arrival().name(), photo.arrival().hash(), photo.facts(), sighting, "");
  }

  /**
   * A file that was left out but may be a photograph, and so a card: its place in the order counts
   * as that of a card that can't be read. Empty for everything else.
   */
  public static Optional<Seen> of(LeftOut file) {
    if (!maybePhoto(file.kind())) {
      return Optional.empty();
    }
    CaptureFacts facts = file.facts() == null ? CaptureFacts.NONE : file.facts();
    CardSighting unread = new CardSighting.Refused(file.reason(), file.advice());
    return Optional.of(new Seen(file.name(), file.hash(), facts, unread, ""));
  }

  private static boolean maybePhoto(LeftOutKind kind) {
    return switch (kind) {
      case NOT_SETTLED,
          PARTIAL_COPY,
          CLOUD_PLACEHOLDER,
          EMPTY,
          DAMAGED,
          HEIC,
          OTHER_PICTURE,
          TOO_LARGE,
          UNREADABLE ->
          true;
      default -> false;
    };
  }

  /** True if a card is in the picture, readable or not. */
  boolean showsCard() {
    return !(sighting instanceof CardSighting.NoCard);
  }

  boolean refused() {
    return sighting instanceof CardSighting.Refused;
  }
}
