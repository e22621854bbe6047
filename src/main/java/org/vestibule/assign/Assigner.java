package org.vestibule.assign;

import java.util.List;
import java.util.function.Function;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.Photo;
import org.vestibule.intake.Roll;

/**
 * Which patient, visit, view, teeth and mirror? Facts in, decision out. A photograph is decided by
 * a person's word or by two independent facts that agree; what is not fully known, or contradicts
 * itself, waits.
 */
public final class Assigner {

  private final AssignSources sources;

  public Assigner(AssignSources sources) {
    this.sources = sources;
  }

  /** An assigner for all photographs of a roll. */
  public RollAssigner forRoll(Roll roll) {
    return forRoll(roll, RollCards.NONE);
  }

  /** An assigner for all photographs of a roll in which cards were looked for. */
  public RollAssigner forRoll(Roll roll, RollCards cards) {
    return forRoll(roll, cards, photo -> List.of());
  }

  /**
   * The same with what persons said of photographs elsewhere than in the manifest.
   *
   * @param elsewhere of each photograph, as by the phones that it came by
   */
  public RollAssigner forRoll(
      Roll roll, RollCards cards, Function<ContentHash, List<PersonWords>> elsewhere) {
    return new RollAssigner(sources, roll, cards, elsewhere);
  }

  /** What becomes of one photograph of a roll; for many, {@link #forRoll} is quicker. */
  public Assignment assign(Photo photo, Roll roll) {
    return forRoll(roll).assign(photo, List.of());
  }

  /**
   * Files by the word of a person who is named. A word beats missing facts; where the photograph's
   * time lies outside the visit, a warning stands among the decision's facts. What is missing is
   * refused with what to add.
   */
  public Outcome<Assignment.Decided> byPerson(CaptureFacts facts, PersonWords words) {
    return new PhotoAssigner(sources, facts).byPerson(words);
  }

  /**
   * What a person's words say of the picture itself and how it is laid by them, exactly as {@link
   * #byPerson} will have it; whose it is need not be said yet.
   */
  public Outcome<Stated> stated(CaptureFacts facts, PersonWords words) {
    return new PhotoAssigner(sources, facts).stated(words);
  }

  /** True if the photograph's time does not lie in the visit; false if it has none. */
  public boolean outside(CaptureFacts facts, Visit visit) {
    return new PhotoAssigner(sources, facts).outside(visit);
  }
}
