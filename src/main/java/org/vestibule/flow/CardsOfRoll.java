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

  /** Photographs that are written into the ledger together. */
  private static final int TOGETHER = 16;

  private final Practice practice;
  private final Ledger ledger;
  private final CardSightings sightings;
  private final SourceFiles sources;
  private final PhotoMarks marks;
  private final FirstSights sights;
  private final boolean keeps;
  private final Map<ContentHash, CardSighting> looked = new HashMap<>();

  /** What was seen and is not yet in the ledger. */
  private final List<Looked> fresh = new ArrayList<>();

  private record Looked(Photo photo, CardSighting sighting) {}

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

  /**
   * Looks at a photograph that was just read, unless it was looked at before or the time is up.
   *
   * @param bytes the photograph's
   */
  void arrived(Photo photo, byte[] bytes, Progress progress) {
    ContentHash hash = photo.arrival().hash();
    Optional<CardSighting> known = sightings.known(hash);
    if (known.isPresent()) {
      looked.put(hash, known.get());
    } else if (progress.mayGoOn()) {
      CardSighting seen = sights.look(photo, bytes);
      looked.put(hash, seen);
      fresh.add(new Looked(photo, seen));
      if (fresh.size() == TOGETHER) {
        keepFresh();
      }
    }
  }

  /** In one transaction for many: of those that a crash takes away each is looked at again. */
  private void keepFresh() {
    if (keeps && !fresh.isEmpty()) {
      ledger.together(
          () -> {
            for (Looked one : fresh) {
              sources.seen(one.photo());
              sightings.keep(one.photo().arrival().hash(), one.sighting());
            }
            return fresh.size();
          });
      fresh.forEach(one -> sights.recorded(one.photo().arrival().hash()));
    }
    fresh.clear();
  }

  /** What sorting needs of a folder's photographs, each of which has arrived. */
  RollCards gather(Roll roll) {
    keepFresh();
    Map<ContentHash, CardSighting> seen = new HashMap<>();
    for (Photo photo : roll.photos()) {
      ContentHash hash = photo.arrival().hash();
      seen.put(
          hash,
          looked.getOrDefault(
              hash,
              CardSighting.Refused.unopened("nobody has looked at it yet", "run ingest again")));
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
