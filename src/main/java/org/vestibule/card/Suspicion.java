package org.vestibule.card;

import java.util.List;
import org.vestibule.base.Outcome;
import org.vestibule.card.CardSighting.NoCard;
import org.vestibule.jpeg.Brightness;
import org.vestibule.jpeg.FirstLook;

/** What the cheap look leaves to look at more closely: where a photograph may show a code. */
public final class Suspicion {

  private final List<Finder> marks;

  private Suspicion(List<Finder> marks) {
    this.marks = List.copyOf(marks);
  }

  /** Searches a photograph that is being looked at, at a small size. */
  public static Suspicion of(FirstLook look) {
    return new Suspicion(Suspects.in(look));
  }

  /**
   * What there is to see. Only a photograph that may show a code is decoded again.
   *
   * @param jpeg the same photograph's bytes
   * @return refused if the picture can't be decoded
   */
  public Outcome<CardSighting> settled(byte[] jpeg) {
    return marks.isEmpty()
        ? Outcome.done(new NoCard())
        : Brightness.use(jpeg, picture -> new CloseLook(picture, marks).sighting());
  }
}
