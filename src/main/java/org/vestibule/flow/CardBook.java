package org.vestibule.flow;

import java.security.SecureRandom;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.vestibule.assign.Disputed;
import org.vestibule.assign.IssuedCard;
import org.vestibule.assign.Visit;
import org.vestibule.assign.VisitList;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.card.CardSheets;
import org.vestibule.card.VisitFace;
import org.vestibule.card.VisitToken;
import org.vestibule.store.ledger.VisitCardRow;
import org.vestibule.store.ledger.VisitCards;
import org.vestibule.words.Language;

/** The practice's visit cards: draws them, keeps their tokens, finds a token's visit again. */
public final class CardBook {

  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

  private final Practice practice;

  public CardBook(Practice practice) {
    this.practice = practice;
  }

  /**
   * Draws the cards of a day's visits. A visit that has a card keeps its token, so that a card
   * printed earlier stays good.
   *
   * @param language of what people read on them
   * @param random for tokens
   * @param by who draws them
   */
  public Outcome<DrawnCards> draw(
      LocalDate day, NamesOnCards names, Language language, SecureRandom random, String by) {
    Outcome<VisitList> all = new VisitBook(practice).all();
    if (!(all instanceof Done<VisitList> known)) {
      return ((Refused<VisitList>) all).as();
    }
    List<Visit> visits = known.value().visits().stream().filter(visit -> isOn(visit, day)).toList();
    List<String> without =
        known.value().disputed().stream()
            .map(Disputed::visit)
            .filter(visit -> isOn(visit, day))
            .map(Visit::key)
            .toList();
    if (visits.isEmpty()) {
      return Outcome.refused(
          without.isEmpty()
              ? "the visit list has no visit on " + day
              : "list and record disagree about every visit on " + day,
          without.isEmpty()
              ? "check the day, or add the visits to the list"
              : "\"visits list\" says about what; put that right first");
    }
    List<VisitFace> faces = new ArrayList<>();
    practice.store().ledger().together(() -> faces.addAll(faces(visits, names, random, by)));
    return CardSheets.visits(faces, language)
        .map(sheet -> new DrawnCards(sheet, faces.size(), without));
  }

  private List<VisitFace> faces(
      List<Visit> visits, NamesOnCards names, SecureRandom random, String by) {
    List<VisitFace> faces = new ArrayList<>();
    for (Visit visit : visits) {
      VisitCardRow card = card(visit, random, by);
      faces.add(
          new VisitFace(
              card.token(), visit.start().format(TIME), visit.key(), names.of(visit.patient())));
    }
    return faces;
  }

  /** The visit's card as it was drawn before, or with a fresh token. */
  private VisitCardRow card(Visit visit, SecureRandom random, String by) {
    for (VisitCardRow before : cards().of(visit.key())) {
      IssuedCard asNow = IssuedCard.of(before.token(), visit);
      if (asNow.equals(issued(before))) {
        return before;
      }
    }
    String token = VisitToken.draw(random);
    while (cards().find(token).isPresent()) {
      token = VisitToken.draw(random);
    }
    IssuedCard fresh = IssuedCard.of(token, visit);
    VisitCardRow row =
        new VisitCardRow(token, fresh.visit(), fresh.issuer(), fresh.patientId(), fresh.day());
    cards().add(row, by);
    return row;
  }

  /** The card with this token, with what the visit list said when it was drawn. */
  public Optional<IssuedCard> of(String token) {
    return cards().find(token).map(CardBook::issued);
  }

  private VisitCards cards() {
    return practice.store().ledger().visitCards();
  }

  private static IssuedCard issued(VisitCardRow row) {
    return new IssuedCard(row.token(), row.visit(), row.issuer(), row.patientId(), row.day());
  }

  private static boolean isOn(Visit visit, LocalDate day) {
    return visit.start().toLocalDate().equals(day);
  }
}
