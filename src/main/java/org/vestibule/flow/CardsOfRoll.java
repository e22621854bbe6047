package org.vestibule.flow;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.vestibule.assign.IssuedCard;
import org.vestibule.assign.RollCards;
import org.vestibule.assign.Seen;
import org.vestibule.base.ContentHash;
import org.vestibule.card.CardSighting;
import org.vestibule.card.CardSighting.NoCard;
import org.vestibule.card.CardSighting.OneCard;
import org.vestibule.card.VisitCard;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.LeftOut;
import org.vestibule.intake.Photo;
import org.vestibule.intake.Roll;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.SeenFile;

/**
 * Gathers what sorting by cards needs: the cards in a folder's photographs, and the photographs
 * that earlier runs saw on the same days, whose files may be gone from the folder by now.
 */
final class CardsOfRoll {

  /** The day a photograph was taken, by its own clock. */
  private static final String DAY = "day";

  private final Practice practice;
  private final Ledger ledger;
  private final CardSightings sightings;
  private final SourceFiles sources;
  private final boolean keeps;

  /**
   * A gatherer.
   *
   * @param keeps false if nothing is to be written
   */
  CardsOfRoll(Practice practice, boolean keeps) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
    this.sightings = new CardSightings(practice);
    this.sources = new SourceFiles(practice);
    this.keeps = keeps;
  }

  RollCards gather(Roll roll, Progress progress) {
    List<Seen> seen = new ArrayList<>();
    Set<ContentHash> here = new HashSet<>();
    Set<LocalDate> days = new TreeSet<>();
    for (int i = 0; i < roll.photos().size(); i++) {
      Photo photo = roll.photos().get(i);
      ContentHash hash = photo.arrival().hash();
      progress.at(i, roll.photos().size(), photo.arrival().shownName());
      seen.add(
          new Seen(photo.arrival().name(), hash, photo.facts(), sighting(photo), filedVisit(hash)));
      here.add(hash);
      day(photo.facts()).ifPresent(days::add);
    }
    roll.leftOut().forEach(file -> Seen.of(file).ifPresent(seen::add));
    seen.addAll(earlier(days, here));
    Set<String> otherFiles =
        roll.leftOut().stream()
            .filter(file -> Seen.of(file).isEmpty())
            .map(LeftOut::name)
            .collect(Collectors.toSet());
    return new RollCards(seen, otherFiles, issued(seen), practice.settings().sorting());
  }

  private CardSighting sighting(Photo photo) {
    ContentHash hash = photo.arrival().hash();
    Optional<CardSighting> known = sightings.known(hash);
    if (known.isPresent()) {
      return known.get();
    }
    CardSighting seen = CardSightings.look(photo);
    if (keeps) {
      ledger.together(
          () -> {
            sources.seen(photo);
            sightings.keep(hash, seen);
            day(photo.facts()).ifPresent(day -> ledger.arrivals().mark(hash, DAY, day.toString()));
            return hash;
          });
    }
    return seen;
  }

  private List<Seen> earlier(Set<LocalDate> days, Set<ContentHash> here) {
    List<Seen> earlier = new ArrayList<>();
    for (LocalDate day : days) {
      for (ContentHash hash : ledger.arrivals().marked(DAY, day.toString())) {
        if (here.add(hash)) {
          String name =
              ledger.arrivals().of(hash).stream().map(SeenFile::name).findFirst().orElse("");
          earlier.add(
              new Seen(
                  name,
                  hash,
                  sources.facts(hash),
                  sightings.known(hash).orElse(new NoCard()),
                  filedVisit(hash)));
        }
      }
    }
    return earlier;
  }

  private String filedVisit(ContentHash hash) {
    List<Intent> current = ledger.intents().current(hash);
    return current.isEmpty()
        ? ""
        : ledger
            .decisions()
            .find(current.get(0).decisionId())
            .map(row -> DecisionJson.read(row.json()).visit())
            .orElse("");
  }

  /** The visit cards among what was seen, as far as they are ours. */
  private List<IssuedCard> issued(List<Seen> seen) {
    return seen.stream()
        .flatMap(each -> token(each.sighting()).stream())
        .distinct()
        .flatMap(token -> ledger.visitCards().find(token).stream())
        .map(
            card ->
                new IssuedCard(
                    card.token(), card.visit(), card.issuer(), card.patientId(), card.day()))
        .toList();
  }

  private static Optional<String> token(CardSighting sighting) {
    return sighting instanceof OneCard one && one.card() instanceof VisitCard card
        ? Optional.of(card.token())
        : Optional.empty();
  }

  private static Optional<LocalDate> day(CaptureFacts facts) {
    return Optional.ofNullable(facts.takenAt()).map(at -> at.toLocalDate());
  }
}
