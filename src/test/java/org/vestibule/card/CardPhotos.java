package org.vestibule.card;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Notation;
import org.vestibule.dental.Stage;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.words.Language;

/** Makes photographs of printed cards, each with its faults, from a seed. */
final class CardPhotos {

  /** A photograph and the cards in it. */
  static final class Photo {

    private final byte[] jpeg;
    private final List<Card> cards;
    private final String seed;

    Photo(byte[] jpeg, List<Card> cards, String seed) {
      this.jpeg = jpeg.clone();
      this.cards = List.copyOf(cards);
      this.seed = seed;
    }

    byte[] jpeg() {
      return jpeg.clone();
    }

    /** None, one or several. */
    List<Card> cards() {
      return cards;
    }

    /** Fault and seed, from which it can be made again. */
    String seed() {
      return seed;
    }
  }

  private static final List<CardFault> PAIRS =
      List.of(
          CardFault.TILTED,
          CardFault.DIM,
          CardFault.GLOSSY,
          CardFault.CURVED,
          CardFault.SMALL,
          CardFault.BLURRED,
          CardFault.COMPRESSED);

  private final List<DrawnCard> cards;
  private final DrawnCard foreign;
  private final int width;

  /** Photographs of this many samples across. */
  CardPhotos(int width) {
    this.width = width;
    List<VisitCard> visits = new ArrayList<>();
    List<VisitFace> faces = new ArrayList<>();
    Random random = new Random(5);
    for (int i = 0; i < 8; i++) {
      StringBuilder token = new StringBuilder();
      for (int j = 0; j < VisitToken.LENGTH; j++) {
        token.append("0123456789ABCDEFGHJKMNPQRSTVWXYZ".charAt(random.nextInt(32)));
      }
      visits.add(new VisitCard(token.toString()));
      faces.add(new VisitFace(token.toString(), "09:" + (10 + i), "V-" + i, "Ana Example"));
    }
    List<ViewCard> views =
        List.of(
            new ViewCard("upper-occlusal", null, Mirror.AS_SHOT, Incisors.TOP, Stage.BEFORE),
            new ViewCard("frontal", null, Mirror.NONE, null, null),
            new ViewCard(
                "oblique-anterior-right",
                new TeethReader(Notation.ISO_3950).read("13-23").orThrow(),
                Mirror.NONE,
                null,
                Stage.FOLLOW_UP),
            new ViewCard("lower-occlusal", null, Mirror.AS_SHOT, Incisors.BOTTOM, null));
    this.cards =
        new ArrayList<>(DrawnCard.of(CardSheets.visits(faces, Language.ENGLISH).orThrow(), visits));
    this.cards.addAll(
        DrawnCard.of(
            CardSheets.views(views, ViewCatalogue.standard(), Language.ENGLISH).orThrow(), views));
    this.foreign = ForeignCode.drawn("https://example.org/spring-offer");
  }

  Photo photo(CardFault fault, long seed) {
    Random random = new Random(seed * 31 + fault.name().hashCode());
    Scene scene = new Scene(width, random);
    DrawnCard card = cards.get(random.nextInt(cards.size()));
    List<Card> held = new ArrayList<>();
    double quality = scene.between(.7, .95);
    Set<CardFault> faults = EnumSet.of(fault);
    boolean mild = fault == CardFault.TWO_FAULTS;
    if (mild) {
      faults.add(PAIRS.get(random.nextInt(PAIRS.size())));
      faults.add(PAIRS.get(random.nextInt(PAIRS.size())));
    }
    if (fault == CardFault.SEVERAL) {
      held.addAll(several(scene, random));
    } else if (fault != CardFault.NO_CARD) {
      DrawnCard shown = fault == CardFault.FOREIGN ? foreign : card;
      scene.hold(shown, pose(scene, faults, mild, random), glare(scene, faults, mild));
      if (fault != CardFault.FOREIGN) {
        held.add(shown.card());
      }
    }
    if (faults.contains(CardFault.BLURRED)) {
      double radius = scene.between(.7, mild ? 1.6 : 3.2) * width / 4032;
      scene.blur(radius * 2, random.nextBoolean() ? radius * 2 : radius * .5);
    }
    if (faults.contains(CardFault.DIM)) {
      scene.dim(scene.between(.05, mild ? .25 : .125), scene.between(2, mild ? 4 : 6));
    } else {
      scene.dim(1, scene.between(.5, 3));
    }
    if (fault == CardFault.MIRRORED) {
      scene.mirror();
    }
    if (faults.contains(CardFault.COMPRESSED)) {
      quality = scene.between(mild ? .25 : .1, .35);
    }
    return new Photo(scene.jpeg(quality), held, fault + " " + seed);
  }

  private static Scene.Pose pose(Scene scene, Set<CardFault> faults, boolean mild, Random random) {
    double share = scene.between(.33, .85);
    double yaw = scene.between(-.2, .2);
    double pitch = scene.between(-.2, .2);
    double roll = scene.between(-.26, .26) + (random.nextInt(8) == 0 ? Math.PI / 2 : 0);
    double radius = 0;
    double x = scene.between(.45, .55);
    double y = scene.between(.45, .55);
    if (faults.contains(CardFault.TILTED)) {
      double slant = scene.between(.52, mild ? .78 : 1.05) * (random.nextBoolean() ? 1 : -1);
      yaw = random.nextBoolean() ? slant : yaw;
      pitch = yaw == slant ? pitch : slant;
    }
    if (faults.contains(CardFault.ROTATED)) {
      roll = scene.between(-Math.PI, Math.PI);
      share = scene.between(.33, .6);
    }
    if (faults.contains(CardFault.CURVED)) {
      radius = scene.between(mild ? 90 : 60, 150) / CardLayout.WIDTH;
    }
    if (faults.contains(CardFault.SMALL)) {
      share = scene.between(mild ? .12 : .08, .18);
      x = scene.between(.15, .85);
      y = scene.between(.15, .85);
    }
    if (faults.contains(CardFault.OUT_OF_FRAME)) {
      double lost = scene.between(.15, .5);
      roll = scene.between(-.26, .26);
      x = random.nextBoolean() ? share * (.5 - lost) : 1 - share * (.5 - lost);
    }
    return new Scene.Pose(x, y, share, yaw, pitch, roll, radius);
  }

  private static double @org.jspecify.annotations.Nullable [] glare(
      Scene scene, Set<CardFault> faults, boolean mild) {
    return faults.contains(CardFault.GLOSSY)
        ? new double[] {
          scene.between(.1, .9), scene.between(.05, .5), scene.between(.05, mild ? .15 : .25)
        }
        : null;
  }

  private List<Card> several(Scene scene, Random random) {
    List<Card> held = new ArrayList<>();
    int count = 2 + random.nextInt(3);
    int first = random.nextInt(cards.size());
    for (int i = 0; i < count; i++) {
      DrawnCard card = cards.get((first + i) % cards.size());
      held.add(card.card());
      scene.hold(
          card,
          new Scene.Pose(
              .27 + .46 * (i % 2),
              i < 2 ? .27 : .73,
              scene.between(.25, .42),
              0,
              0,
              scene.between(-.2, .2),
              0),
          null);
    }
    return held;
  }
}
