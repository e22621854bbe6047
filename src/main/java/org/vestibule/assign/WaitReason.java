package org.vestibule.assign;

import org.vestibule.base.Outcome;

/**
 * Why a photograph waits. Sentences hold no patient data.
 *
 * @param kind of the reason
 * @param sentence what was found and what was expected
 * @param advice what a person can do
 */
public record WaitReason(Kind kind, String sentence, String advice) {

  /** Kinds of reasons, worst first. */
  public enum Kind {
    /** Two sources can't both be true. */
    CONTRADICTION,
    /** Another version of the same shot exists, and nobody said which one is to be filed. */
    SAME_SHOT,
    /** A person chose another version of the same shot. */
    OTHER_VERSION,
    /** A word, number or key is not known. */
    UNKNOWN_WORD,
    /** A card is in the picture, so it is no clinical photograph, or not one alone. */
    CARD,
    /** The order of the photographs between two cards is not certain. */
    CARD_ORDER,
    /** Its time can't be used. */
    TIME,
    /** Nobody said whose it is. */
    NO_VISIT,
    /** A card stands beside it, but does not settle whose it is. */
    CARD_ALONE,
    /** One fact alone names the visit, and two are needed. */
    ONE_FACT,
    /** Nobody said what it shows. */
    NO_VIEW,
    /** Right and left are not known. */
    NO_MIRROR,
    /** The mirror is known, but not how to lay the picture. */
    ORIENTATION
  }

  static WaitReason of(Kind kind, Outcome.Refused<?> refused) {
    return new WaitReason(kind, refused.reason(), refused.advice());
  }

  /**
   * A version of the same shot is filed, so this one never is without a person's word.
   *
   * @param id of the filed photograph
   */
  public static WaitReason versionFiled(String id) {
    return new WaitReason(
        Kind.SAME_SHOT,
        "another version of this shot is filed already, as photograph " + id,
        "nothing needs to be done, unless this is the one to keep: then reject the other first");
  }

  /** Sentence and advice as one line. */
  public String line() {
    return sentence + "; " + advice;
  }
}
