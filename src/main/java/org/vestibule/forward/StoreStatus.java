package org.vestibule.forward;

import java.util.Locale;
import java.util.Map;
import org.vestibule.forward.StoreAnswer.Accepted;
import org.vestibule.forward.StoreAnswer.Failed;
import org.vestibule.forward.StoreAnswer.Reach;
import org.vestibule.forward.StoreAnswer.Refused;

/** What the status of a C-STORE response, or a reason of PS3.18 I.2.2, means for a delivery. */
public final class StoreStatus {

  /** PS3.7 C.1.1. */
  private static final int SUCCESS = 0x0000;

  /** PS3.7 C.5.11: the archive has an object with this identifier. */
  private static final int DUPLICATE = 0x0111;

  private StoreStatus() {}

  /**
   * The answer that a status stands for.
   *
   * @param status from 0 to 0xFFFF
   * @param more what there is to add in words of our own; the archive's may name a patient (PS3.7
   *     C.4.2.1.8: Error Comment is free text), so they stand nowhere
   */
  public static StoreAnswer answer(int status, String more) {
    return answer(status, more, Map.of());
  }

  /** The same with what the archive said it changed. */
  public static StoreAnswer answer(int status, String more, Map<String, String> coerced) {
    if (status == SUCCESS) {
      return new Accepted(status, "", coerced); // what nearly every answer is, without a table
    }
    StatusTable.Meaning meaning = StatusTable.STORE.meaning(status);
    String words = words(status, meaning.words(), more);
    return switch (meaning.effect()) {
      case ACCEPTED, THERE -> new Accepted(status, words, coerced);
      case REFUSED -> new Refused(status, words);
      // It may have kept the object before it failed: then a correction has to reach it.
      case LATER -> new Failed(status, words, Reach.OBJECT, true);
      case STOP -> new Failed(status, words, Reach.DESTINATION);
    };
  }

  /** The answer for an object that the archive says it has not stored, for this reason. */
  static StoreAnswer failure(int reason) {
    return answer(reason, "") instanceof Accepted accepted && reason != DUPLICATE
        ? new Failed(reason, "not stored: " + accepted.words(), Reach.OBJECT)
        : answer(reason, "");
  }

  /** A failure reason of storage commitment (PS3.3 C.14.1.1) in words. */
  public static String commitmentWords(int reason) {
    return words(reason, StatusTable.COMMITMENT.meaning(reason).words(), "");
  }

  private static String words(int status, String meaning, String more) {
    String number =
        status < 0 ? "no reason given" : String.format(Locale.ROOT, "status %04X", status);
    return meaning + " (" + number + ")" + (more.isEmpty() ? "" : "; " + more);
  }
}
