package org.vestibule.card;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.vestibule.card.CardSighting.NoCard;
import org.vestibule.card.CardSighting.Refused;
import org.vestibule.jpeg.Brightness;
import org.vestibule.jpeg.GrayRaster;

/**
 * The closer look: reads the codes around suspected corner marks, larger and larger until one is
 * read, and says what was seen.
 */
final class CloseLook {

  /** How far from a mark the rest of its card may lie, in modules. */
  private static final float REACH = 75;

  /** Samples to a module from which a code may be read. */
  private static final float READABLE = 2.2f;

  /** Samples to a module beyond which the whole size adds nothing. */
  private static final float COARSEST = 20;

  private static final String AGAIN =
      "photograph it again, filling half of the frame, without glare and held flat";

  private final Brightness picture;
  private final List<Finder> suspects;

  /** Part of the picture to look at, in blocks. */
  private int left;

  private int top;
  private int right;
  private int bottom;

  /** The marks seen at the closest look that was needed, in blocks. */
  private List<Finder> marks = List.of();

  private final List<CodeRead> codes = new ArrayList<>();

  CloseLook(Brightness picture, List<Finder> suspects) {
    this.picture = picture;
    this.suspects = suspects;
    around();
  }

  private void around() {
    left = picture.blocksWide();
    top = picture.blocksHigh();
    for (Finder mark : suspects) {
      float reach = REACH * mark.module();
      left = Math.min(left, Math.max(0, (int) (mark.x() - reach)));
      top = Math.min(top, Math.max(0, (int) (mark.y() - reach)));
      right = Math.max(right, Math.min(picture.blocksWide(), (int) (mark.x() + reach) + 1));
      bottom = Math.max(bottom, Math.min(picture.blocksHigh(), (int) (mark.y() + reach) + 1));
    }
  }

  CardSighting sighting() {
    float module = (float) suspects.stream().mapToDouble(Finder::module).min().orElse(1);
    for (int eighths = 1; eighths <= 8 && (codes.isEmpty() || strange()); eighths *= 2) {
      float samples = module * eighths;
      if (eighths == 8 ? samples <= COARSEST : samples >= READABLE) {
        look(eighths);
      }
    }
    return judged();
  }

  /** True if there are marks of a code that was not read. */
  private boolean strange() {
    return Finder.anyFit(
        marks.stream().filter(mark -> codes.stream().noneMatch(code -> code.owns(mark))).toList());
  }

  private void look(int eighths) {
    GrayRaster part = picture.part(eighths, left, top, right, bottom);
    Shades shades = Shades.of(part);
    float factor = 1f / eighths;
    List<Finder> near = Suspects.in(shades);
    List<Finder> seen = new ArrayList<>();
    for (Finder mark : near) {
      seen.add(
          new Finder(left + mark.x() * factor, top + mark.y() * factor, mark.module() * factor));
    }
    marks = seen.size() >= marks.size() ? seen : marks;
    List<CodeRead> read = new ArrayList<>(CodeReader.read(part));
    read.addAll(new GridReader(shades).read(near));
    read.forEach(code -> codes.add(code.placed(factor, left, top)));
  }

  private CardSighting judged() {
    List<CodeRead> cards =
        codes.stream().filter(code -> !(CardText.read(code.text()) instanceof NoCard)).toList();
    TreeSet<String> texts = new TreeSet<>(cards.stream().map(CodeRead::text).toList());
    boolean another = strange();
    if (texts.isEmpty()) {
      return another
          ? new Refused("a code like a card's is seen but can't be read", AGAIN)
          : new NoCard();
    }
    if (texts.size() > 1) {
      return new Refused(
          texts.size() + " cards are in one photograph", "photograph one card, and nothing else");
    }
    if (cards.stream().anyMatch(CodeRead::mirrored)) {
      return new Refused(
          "the card is mirrored in the photograph",
          "photograph it directly, not in a mirror; if it was, have the phone's front camera store"
              + " pictures unmirrored, and look at the photographs beside it");
    }
    if (another) {
      return new Refused(
          "a card and another code that can't be read are in one photograph",
          "photograph one card, and nothing else");
    }
    return CardText.read(texts.first());
  }
}
