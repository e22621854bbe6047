package org.vestibule.card;

import java.util.List;
import org.vestibule.base.Outcome;
import org.vestibule.card.CardSighting.NoCard;
import org.vestibule.jpeg.Brightness;

/**
 * Looks for a card in a photograph. At an eighth of its size it searches for the corner marks of a
 * code, which costs little; only where there are any does it look closer, and only there.
 */
public final class CardReader {

  private CardReader() {}

  /**
   * Looks for a card in a JPEG file's first picture. How Exif says it must be turned does not
   * matter.
   *
   * @return refused if the picture itself can't be decoded
   */
  public static Outcome<CardSighting> read(byte[] jpeg) {
    return Brightness.use(jpeg, CardReader::read);
  }

  /** Looks for a card in a picture that is decoded already. */
  public static CardSighting read(Brightness picture) {
    List<Finder> suspects = Suspects.in(picture);
    if (suspects.isEmpty()) {
      return new NoCard();
    }
    return new CloseLook(picture, suspects).sighting();
  }
}
