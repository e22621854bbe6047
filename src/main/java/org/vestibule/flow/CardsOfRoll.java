package org.vestibule.flow;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.vestibule.assign.DecisionRecord;
import org.vestibule.assign.IssuedCard;
import org.vestibule.assign.RollCards;
import org.vestibule.assign.Seen;
import org.vestibule.base.ContentHash;
import org.vestibule.card.CardSighting;
import org.vestibule.card.CardSighting.NoCard;
import org.vestibule.card.CardSighting.OneCard;
import org.vestibule.card.VisitCard;
import org.vestibule.intake.Photo;
import org.vestibule.intake.Roll;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.SeenFile;

/**
 * Gathers what sorting by cards needs: the cards in a folder's photographs, and the photographs
 * that earlier runs saw on the same days, whose files may be gone from the folder by now.
 */
final class CardsOfRoll {

  private final Practice practice;
  private final Ledger ledger;
  private final CardSightings sightings;
  private final SourceFiles sources;
  private final PhotoMarks marks;
  private final FirstSights sights;
  private final boolean keeps;

  /**
   * A gatherer.
   *
   * @param sights takes what is seen of photographs that are looked at
   * @param keeps false if nothing is to be written
   */
  CardsOfRoll(Practice practice, FirstSights sights, boolean keeps) {
    this.sights = sights;
    this.practice = practice;
    this.ledger = practice.store().ledger();
    this.sightings = new CardSightings(practice);
    this.sources = new SourceFiles(practice);
    this.marks = new PhotoMarks(practice);
    this.keeps = keeps;
  }

  RollCards gather(Roll roll, Progress progress) {
    Map<ContentHash, CardSighting> seen = new HashMap<>();
    for (int i = 0; i < roll.photos().size(); i++) {
      Photo photo = roll.photos().get(i);
      progress.at(i, roll.photos().size(), photo.arrival().shownName());
      seen.put(photo.arrival().hash(), sighting(photo, progress));
    }
    List<Seen> earlier = earlier(roll);
    Stream<CardSighting> all =
        Stream.concat(seen.values().stream(), earlier.stream().map(Seen::sighting));
    return RollCards.of(
        roll,
        photo -> seen.getOrDefault(photo.arrival().hash(), new NoCard()),
        earlier,
        issued(all),
        practice.settings().sorting());
  }

  private CardSighting sighting(Photo photo, Progress progress) {
    ContentHash hash = photo.arrival().hash();
    Optional<CardSighting> known = sightings.known(hash);
    if (known.isPresent()) {
      return known.get();
    }
    if (!progress.mayGoOn()) {
      return CardSighting.Refused.unopened("nobody has looked at it yet", "run ingest again");
    }
    CardSighting seen = sights.look(photo);
    if (keeps) {
      ledger.together(
          () -> {
            sources.seen(photo);
            sightings.keep(hash, seen);
            return hash;
          });
    }
    return seen;
  }

  /** What earlier runs saw of the roll's days, the roll's own photographs among it. */
  private List<Seen> earlier(Roll roll) {
    Set<ContentHash> hashes = new HashSet<>();
    for (Photo photo : roll.photos()) {
      hashes.addAll(marks.ofSameDay(photo.arrival().name(), photo.facts()));
    }
    List<Seen> earlier = new ArrayList<>();
    for (ContentHash hash : hashes) {
      String name = ledger.arrivals().of(hash).stream().map(SeenFile::name).findFirst().orElse("");
      earlier.add(
          new Seen(
              name,
              hash,
              sources.facts(hash),
              sightings.known(hash).orElse(new NoCard()),
              filedVisit(hash)));
    }
    return earlier;
  }

  private String filedVisit(ContentHash hash) {
    return CurrentDecision.of(hash, ledger).map(DecisionRecord::visit).orElse("");
  }

  /** The visit cards among what was seen, as far as they are ours. */
  private List<IssuedCard> issued(Stream<CardSighting> seen) {
    CardBook cards = new CardBook(practice);
    return seen.flatMap(each -> token(each).stream())
        .distinct()
        .flatMap(token -> cards.of(token).stream())
        .toList();
  }

  private static Optional<String> token(CardSighting sighting) {
    return sighting instanceof OneCard one && one.card() instanceof VisitCard card
        ? Optional.of(card.token())
        : Optional.empty();
  }
}
