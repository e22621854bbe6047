package org.vestibule.card;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.vestibule.base.Outcome;
import org.vestibule.card.CardSighting.NoCard;
import org.vestibule.card.CardSighting.OneCard;
import org.vestibule.card.CardSighting.Refused;
import org.vestibule.dental.Area;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Occupant;
import org.vestibule.dental.Stage;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.Tooth;
import org.vestibule.dental.ToothPosition;
import org.vestibule.dental.ViewCatalogue;

/** The text in a card's code, and how everything else is told apart from it. */
final class CardTextTest {

  private static final VisitCard VISIT = new VisitCard("7K3M0QWX9Z");
  private static final ViewCard VIEW =
      new ViewCard("upper-occlusal", null, Mirror.AS_SHOT, Incisors.TOP, Stage.BEFORE);

  /** The characters of the alphanumeric mode in the order of ISO/IEC 18004, table 5 (memory). */
  private static final String ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";

  @Test
  void aVisitCardHoldsItsTokenAndNothingElse() {
    String text = CardText.of(VISIT).orThrow();

    assertThat(text).startsWith("VSTB1V7K3M0QWX9Z").hasSize(20);
    assertThat(CardText.read(text)).isEqualTo(new OneCard(VISIT));
  }

  @Test
  void aViewCardSaysItsViewInAFewCharacters() {
    String text = CardText.of(VIEW).orThrow();

    assertThat(text).startsWith("VSTB1W19UPPER-OCCLUSAL:STB:").hasSize(31);
    assertThat(CardText.read(text)).isEqualTo(new OneCard(VIEW));
  }

  /** The check worked out another way: with big numbers, as its definition says. */
  @Test
  void theCheckIsTheRestOfTheTextAsANumber() {
    BigInteger prime = BigInteger.ONE.shiftLeft(20).subtract(BigInteger.ONE);
    while (!prime.isProbablePrime(100)) {
      prime = prime.subtract(BigInteger.ONE);
    }
    String text = CardText.of(VISIT).orThrow();
    BigInteger number = BigInteger.ZERO;
    for (char letter : text.substring(0, 16).toCharArray()) {
      number =
          number.multiply(BigInteger.valueOf(45)).add(BigInteger.valueOf(ALPHABET.indexOf(letter)));
    }
    int rest = number.mod(prime).intValueExact();

    StringBuilder check = new StringBuilder();
    for (int shift = 15; shift >= 0; shift -= 5) {
      check.append(ALPHABET.charAt(rest >> shift & 31));
    }
    assertThat(text.substring(16)).isEqualTo(check.toString());
  }

  @Test
  void everyViewAndManyTeethComeBackAsTheyWere() {
    long seed = 7;
    Random random = new Random(seed);
    List<ViewCard> cards = new ArrayList<>();
    ViewCatalogue.standard()
        .all()
        .forEach(
            view ->
                cards.add(
                    new ViewCard(
                        view.key(),
                        teeth(random),
                        pick(Mirror.values(), random),
                        pick(Incisors.values(), random),
                        pick(Stage.values(), random))));
    for (int i = 0; i < 500; i++) {
      cards.add(
          new ViewCard(
              "frontal", teeth(random), null, pick(Incisors.values(), random), Stage.AFTER));
    }
    int drawn = 0;
    for (ViewCard card : cards) {
      Outcome<String> text = CardText.of(card);
      if (text instanceof Outcome.Done<String> done) {
        drawn++;
        assertThat(CardText.read(done.value())).as("seed %d", seed).isEqualTo(new OneCard(card));
      }
    }
    assertThat(drawn).isGreaterThan(cards.size() * 9 / 10);
  }

  @Test
  void everySingleChangeEveryCutAndEveryExchangeIsRefused() {
    for (Card card : List.of(VISIT, VIEW)) {
      String text = CardText.of(card).orThrow();
      for (int at = 0; at < text.length(); at++) {
        for (char letter : (ALPHABET + "aé").toCharArray()) {
          String changed = text.substring(0, at) + letter + text.substring(at + 1);
          if (!changed.equals(text)) {
            assertThat(CardText.read(changed)).as(changed).isNotInstanceOf(OneCard.class);
          }
        }
        assertThat(CardText.read(text.substring(0, at))).isNotInstanceOf(OneCard.class);
        for (int other = at + 1; other < text.length(); other++) {
          StringBuilder exchanged = new StringBuilder(text);
          exchanged.setCharAt(at, text.charAt(other));
          exchanged.setCharAt(other, text.charAt(at));
          if (!exchanged.toString().equals(text)) {
            assertThat(CardText.read(exchanged.toString())).isNotInstanceOf(OneCard.class);
          }
        }
      }
    }
  }

  @Test
  void changesOfThreeNeighboursAreAllFound() {
    long seed = 11;
    Random random = new Random(seed);
    String text = CardText.of(VISIT).orThrow();
    for (int i = 0; i < 200_000; i++) {
      int at = random.nextInt(text.length() - 2);
      StringBuilder changed = new StringBuilder(text);
      for (int j = 0; j < 3; j++) {
        changed.setCharAt(at + j, ALPHABET.charAt(random.nextInt(45)));
      }
      if (!changed.toString().equals(text)) {
        assertThat(CardText.read(changed.toString()))
            .as("seed %d", seed)
            .isNotInstanceOf(OneCard.class);
      }
    }
  }

  @Test
  void foreignCodesAreNoCards() {
    for (String foreign :
        List.of("https://example.org/offer", "", "VST", "vstb1v7k3m0qwx9z0000", "WIFI:S:guest;;")) {
      assertThat(CardText.read(foreign)).as(foreign).isEqualTo(new NoCard());
    }
  }

  @Test
  void aShortenedCardSaysSo() {
    String text = CardText.of(VISIT).orThrow();

    assertThat(CardText.read(text.substring(0, 17)))
        .isEqualTo(
            new Refused(
                "the card's code is cut short: 17 characters, where 20 were expected",
                "photograph the card again, or print it again"));
    assertThat(CardText.read("VSTB1V"))
        .isEqualTo(
            new Refused(
                "the card's code is cut short: 6 characters, where at least 10 were expected",
                "photograph the card again, or print it again"));
  }

  @Test
  void anAlteredCardSaysSo() {
    String text = CardText.of(VISIT).orThrow().replace('7', '8');

    assertThat(CardText.read(text))
        .isEqualTo(
            new Refused(
                "the card's code fails its check: its text was altered",
                "photograph the card again, or print it again"));
  }

  @Test
  void aLaterVersionSaysSo() {
    assertThat(CardText.read(CheckLetters.added("VSTB2VSOMETHING-NEW")))
        .isEqualTo(
            new Refused(
                "the card is of version 2, this program reads 1",
                "bring the program up to date, or print the card again with this one"));
    assertThat(CardText.read("VSTB2VSOMETHING-NEW0000"))
        .isEqualTo(
            new Refused(
                "the card's code fails its check: its text was altered",
                "photograph the card again, or print it again"));
  }

  @Test
  void whatVersionOneDoesNotKnowIsRefused() {
    Refused unknown =
        new Refused(
            "the card's code passes its check but says something that version 1 doesn't know",
            "print the card again with this program");

    for (String text :
        List.of(
            "VSTB1X7K3M0QWX9Z",
            "VSTB1V7K3M0QWXIL",
            "VSTB1V7K3M0QWX9ZAA",
            "VSTB1W13FRONTAL:Q--:X",
            "VSTB1W15FRONTAL:---:99Z")) {
      assertThat(CardText.read(CheckLetters.added(text))).as(text).isInstanceOf(Refused.class);
    }
    assertThat(CardText.read(CheckLetters.added("VSTB1X7K3M0QWX9Z"))).isEqualTo(unknown);
  }

  @Test
  void whatDoesNotFitOnACardIsRefused() {
    Teeth every = Teeth.of(Tooth.all().stream().filter(tooth -> tooth.iso() % 2 == 0).toList());

    assertThat(CardText.of(new ViewCard("frontal", every, null, null, null)))
        .isInstanceOfSatisfying(
            Outcome.Refused.class,
            refused -> {
              assertThat(refused.reason())
                  .matches("the card's code would hold \\d+ characters, more than 84");
              assertThat(refused.advice())
                  .isEqualTo(
                      "name fewer teeth, an area such as \"upper arch\", or a range such as 13-23");
            });
    assertThat(CardText.of(new VisitCard("short")))
        .isEqualTo(
            Outcome.refused(
                "the visit's token is not 10 characters of a token's alphabet",
                "draw the visit's card again"));
  }

  @Test
  void tokensAreDrawnByChance() {
    SecureRandom random = new SecureRandom();
    Set<String> tokens = new HashSet<>();
    for (int i = 0; i < 2000; i++) {
      String token = VisitToken.draw(random);
      assertThat(VisitToken.isToken(token)).isTrue();
      tokens.add(token);
    }
    assertThat(tokens).hasSize(2000);
  }

  private static Teeth teeth(Random random) {
    List<ToothPosition> positions = new ArrayList<>();
    List<Tooth> all = Tooth.all();
    int start = random.nextInt(all.size());
    for (int i = 0; i <= random.nextInt(4); i++) {
      Occupant occupant = random.nextInt(3) == 0 ? Occupant.IMPLANT : Occupant.TOOTH;
      positions.add(new ToothPosition(all.get((start + i) % all.size()), occupant));
    }
    List<Area> areas = random.nextInt(3) == 0 ? List.of(pick(Area.values(), random)) : List.of();
    return new Teeth(positions, areas);
  }

  private static <T> T pick(T[] values, Random random) {
    return values[random.nextInt(values.length)];
  }
}
