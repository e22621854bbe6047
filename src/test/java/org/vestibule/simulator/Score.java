package org.vestibule.simulator;

/**
 * Counts over the files of one day or of many.
 *
 * @param rolls days counted
 * @param wrongRolls days with at least one wrong filing
 * @param clinical clinical photographs
 * @param filedRight clinical photographs filed to their patient, and to their visit if one was
 *     claimed
 * @param filedWrong photographs filed to a wrong patient or visit, those of private life included
 * @param viewWrong of those filed right, how many with another view than was taken
 * @param sideWrong of those filed right with the right view, how many with another mirror or other
 *     incisors
 * @param waiting clinical photographs that wait
 * @param clinicalSetAside clinical photographs set aside as cards
 * @param cardsFiled photographs of cards filed as clinical ones
 * @param cardsSetAside photographs of cards set aside
 * @param rightWithView of those filed right, how many with a view: nothing was left to say
 * @param wrongWithView of those filed wrong, how many with a view
 */
public record Score(
    long rolls,
    long wrongRolls,
    long clinical,
    long filedRight,
    long filedWrong,
    long viewWrong,
    long sideWrong,
    long waiting,
    long clinicalSetAside,
    long cardsFiled,
    long cardsSetAside,
    long rightWithView,
    long wrongWithView) {

  /** Nothing counted yet. */
  public static final Score NONE = new Score(0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0);

  /** Both together. */
  public Score plus(Score other) {
    return new Score(
        rolls + other.rolls,
        wrongRolls + other.wrongRolls,
        clinical + other.clinical,
        filedRight + other.filedRight,
        filedWrong + other.filedWrong,
        viewWrong + other.viewWrong,
        sideWrong + other.sideWrong,
        waiting + other.waiting,
        clinicalSetAside + other.clinicalSetAside,
        cardsFiled + other.cardsFiled,
        cardsSetAside + other.cardsSetAside,
        rightWithView + other.rightWithView,
        wrongWithView + other.wrongWithView);
  }

  /** Share of the clinical photographs that were filed right by themselves, 0 to 1. */
  public double selfFiledShare() {
    return clinical == 0 ? 0 : (double) filedRight / clinical;
  }

  /** Share of the clinical photographs that were filed right with a view, 0 to 1. */
  public double withViewShare() {
    return clinical == 0 ? 0 : (double) rightWithView / clinical;
  }

  /**
   * Upper end of the one-sided 95 % interval for the share of rolls with a wrong filing. Rolls are
   * drawn independently of each other; the photographs of one roll are not.
   */
  public double wrongRollsAtMost() {
    return rolls == 0 ? 1 : UpperBound.oneSided(wrongRolls, rolls, 0.95);
  }
}
