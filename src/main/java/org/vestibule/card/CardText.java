package org.vestibule.card;

import java.util.Optional;
import org.vestibule.base.Outcome;
import org.vestibule.card.CardSighting.NoCard;
import org.vestibule.card.CardSighting.OneCard;
import org.vestibule.card.CardSighting.Refused;

/**
 * The text in a card's code. All of it are characters of a QR code's alphanumeric mode, so that the
 * code has few and large modules:
 *
 * <pre>
 * VSTB         what it is
 * 1            version
 * V or W       visit or view
 * (view only)  length of what follows, two digits
 * ...          visit: the token; view: see {@link ViewText}
 * 4 characters check, see {@link CheckLetters}; every version ends with it
 * </pre>
 */
final class CardText {

  private static final String MARK = "VSTB";
  private static final char VERSION = '1';
  private static final char VISIT = 'V';
  private static final char VIEW = 'W';
  private static final int HEAD = MARK.length() + 2;
  private static final int LENGTH_DIGITS = 2;

  /** What a symbol of 41 x 41 modules holds at the highest error correction. */
  static final int LONGEST = 84;

  private static final String AGAIN = "photograph the card again, or print it again";

  private CardText() {}

  /** The text of a card; refused if it can't be said or is too long for a card. */
  static Outcome<String> of(Card card) {
    if (card instanceof VisitCard visit) {
      return VisitToken.isToken(visit.token())
          ? Outcome.done(CheckLetters.added(MARK + VERSION + VISIT + visit.token()))
          : Outcome.refused(
              "the visit's token is not " + VisitToken.LENGTH + " characters of a token's alphabet",
              "draw the visit's card again");
    }
    String body = ViewText.of((ViewCard) card);
    int length = HEAD + LENGTH_DIGITS + body.length() + CheckLetters.LENGTH;
    if (length > LONGEST) {
      return Outcome.refused(
          "the card's code would hold " + length + " characters, more than " + LONGEST,
          "name fewer teeth, an area such as \"upper arch\", or a range such as 13-23");
    }
    if (!CheckLetters.canHold(body)) {
      return Outcome.refused(
          "the view's key has characters that a card's code can't hold",
          "use small letters, digits and single hyphens");
    }
    String digits = "" + (char) ('0' + body.length() / 10) + (char) ('0' + body.length() % 10);
    return Outcome.done(CheckLetters.added(MARK + VERSION + VIEW + digits + body));
  }

  /** True if a text is exactly a card's. */
  static boolean isCard(String text) {
    return read(text) instanceof OneCard;
  }

  /** What a code's text says; a text that is not a card's is no card. */
  static CardSighting read(String text) {
    if (!text.startsWith(MARK)) {
      return new NoCard();
    }
    if (text.length() < HEAD + CheckLetters.LENGTH) {
      return cutShort(text.length(), "at least " + (HEAD + CheckLetters.LENGTH));
    }
    if (text.charAt(MARK.length()) != VERSION) {
      return CheckLetters.holds(text)
          ? new Refused(
              "the card is of version " + text.charAt(MARK.length()) + ", this program reads 1",
              "bring the program up to date, or print the card again with this one")
          : altered();
    }
    Optional<Integer> expected = expectedLength(text);
    if (expected.isPresent() && text.length() < expected.get()) {
      return cutShort(text.length(), Integer.toString(expected.get()));
    }
    if (!CheckLetters.holds(text)) {
      return altered();
    }
    if (expected.isEmpty() || text.length() != expected.get()) {
      return unknown();
    }
    return card(text).<CardSighting>map(OneCard::new).orElseGet(CardText::unknown);
  }

  /** The length that a text of this version must have, if its head says it. */
  private static Optional<Integer> expectedLength(String text) {
    char kind = text.charAt(HEAD - 1);
    if (kind == VISIT) {
      return Optional.of(HEAD + VisitToken.LENGTH + CheckLetters.LENGTH);
    }
    int tens = text.charAt(HEAD) - '0';
    int ones = text.charAt(HEAD + 1) - '0';
    if (kind != VIEW || tens < 0 || tens > 9 || ones < 0 || ones > 9) {
      return Optional.empty();
    }
    return Optional.of(HEAD + LENGTH_DIGITS + 10 * tens + ones + CheckLetters.LENGTH);
  }

  private static Optional<Card> card(String text) {
    int end = text.length() - CheckLetters.LENGTH;
    if (text.charAt(HEAD - 1) == VISIT) {
      String token = text.substring(HEAD, end);
      return VisitToken.isToken(token) ? Optional.of(new VisitCard(token)) : Optional.empty();
    }
    return ViewText.read(text.substring(HEAD + LENGTH_DIGITS, end)).map(card -> card);
  }

  private static Refused cutShort(int length, String expected) {
    return new Refused(
        "the card's code is cut short: "
            + length
            + " characters, where "
            + expected
            + " were expected",
        AGAIN);
  }

  private static Refused altered() {
    return new Refused("the card's code fails its check: its text was altered", AGAIN);
  }

  private static Refused unknown() {
    return new Refused(
        "the card's code passes its check but says something that version 1 doesn't know",
        "print the card again with this program");
  }
}
