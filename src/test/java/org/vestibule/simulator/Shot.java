package org.vestibule.simulator;

import java.time.LocalDateTime;
import org.jspecify.annotations.Nullable;
import org.vestibule.card.Card;
import org.vestibule.card.CardSighting;

/** The release of a shutter. */
final class Shot {

  /** Why it was released. */
  enum Role {
    OPENING,
    CLOSING,
    VIEW_CARD,
    PHOTO,
    PRIVATE
  }

  final Role role;

  /** Null for private life. */
  final @Nullable Sitting sitting;

  Phone phone;
  LocalDateTime at;
  Subject subject;
  CardSighting sighting;

  /** Deleted on the phone: it had a number and leaves no file. */
  boolean deleted;

  Shot(Role role, @Nullable Sitting sitting, Phone phone, LocalDateTime at, Subject subject) {
    this.role = role;
    this.sitting = sitting;
    this.phone = phone;
    this.at = at;
    this.subject = subject;
    this.sighting =
        subject instanceof Subject.OfCard card
            ? new CardSighting.OneCard(card.card())
            : new CardSighting.NoCard();
  }

  boolean isVisitCard() {
    return role == Role.OPENING || role == Role.CLOSING;
  }

  /** Another card was in front of the camera. */
  void shows(Card card) {
    subject = new Subject.OfCard(card);
    sighting = new CardSighting.OneCard(card);
  }
}
