package org.vestibule.assign;

import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.vestibule.card.CardSighting;
import org.vestibule.intake.Photo;
import org.vestibule.intake.Roll;

/**
 * What cards and the order of photographs can say about a roll.
 *
 * @param seen every photograph whose place in an order matters: those of the roll, those that
 *     earlier runs saw on the same days in the same folders, and unread pictures
 * @param otherFiles names of files that are no photographs but may have used up a file number, such
 *     as videos
 * @param issued the visit cards that were drawn
 * @param rules what the site has settled
 */
public record RollCards(
    List<Seen> seen, Set<String> otherFiles, List<IssuedCard> issued, SortingRules rules) {

  /** Nobody looked for cards. */
  public static final RollCards NONE =
      new RollCards(List.of(), Set.of(), List.of(), SortingRules.STRICT);

  public RollCards {
    seen = List.copyOf(seen);
    otherFiles = Set.copyOf(otherFiles);
    issued = List.copyOf(issued);
  }

  /**
   * What a roll says together with what earlier runs saw. An unread picture counts as a card that
   * can't be read; a duplicate has a place in its own folder's order too.
   *
   * @param sightings what a look for cards saw in each photograph of the roll
   * @param earlier photographs of earlier runs; one that is in the roll again is taken from there,
   *     except for the visit it is filed under
   */
  public static RollCards of(
      Roll roll,
      Function<Photo, CardSighting> sightings,
      List<Seen> earlier,
      List<IssuedCard> issued,
      SortingRules rules) {
    return new RollCardsBuilder(roll, earlier).build(sightings, issued, rules);
  }
}
