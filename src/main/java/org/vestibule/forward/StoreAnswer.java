package org.vestibule.forward;

import java.util.Map;

/**
 * What came of sending one object.
 *
 * <p>A status is the number that the archive gave (PS3.7 annex C, PS3.4 table B.2-1; over DICOMweb
 * the warning or failure reason of PS3.18 I.2.2), or -1 if it gave none. Words are for people, one
 * line without patient data.
 */
public sealed interface StoreAnswer {

  int NO_STATUS = -1;

  int status();

  String words();

  /**
   * The archive has taken it; that is not yet confirmed.
   *
   * @param words of the warning; empty if there was none
   * @param coerced what the archive said it changed (PS3.4 B.4.1.3): keyword to the value it has
   *     now; empty if it named nothing
   */
  record Accepted(int status, String words, Map<String, String> coerced) implements StoreAnswer {
    public Accepted {
      coerced = Map.copyOf(coerced);
    }
  }

  /** The archive will not take this object, today or tomorrow. */
  record Refused(int status, String words) implements StoreAnswer {}

  /**
   * It was not taken now, and may be later.
   *
   * @param perhapsThere true if the archive may have it all the same
   */
  record Failed(int status, String words, Reach reach, boolean perhapsThere)
      implements StoreAnswer {

    /** A session that broke leaves it open whether the object arrived; an answer does not. */
    public Failed(int status, String words, Reach reach) {
      this(status, words, reach, reach == Reach.SESSION);
    }
  }

  /** How far a failure reaches. */
  enum Reach {
    /** This object alone; the next one can be sent in the same session. */
    OBJECT,
    /** The session is over, perhaps because of this object; another one may be opened at once. */
    SESSION,
    /** The archive takes nothing now, such as when its disk is full: leave it alone for a while. */
    DESTINATION
  }
}
