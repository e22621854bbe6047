package org.vestibule.flow.keeping;

import java.util.List;
import org.vestibule.flow.PhotoWords;

/**
 * An object that lies among the others and that the ledger does not know, as after an older copy of
 * the ledger was brought back.
 *
 * @param uid its name
 * @param frame name of the frame of which it is a crop; empty if it is none
 * @param fault why it can't be relied on, such as damage; empty if it is a sound object of ours
 * @param holds what stands in it, in words
 * @param doubts why it may not be what counts, in sentences
 * @param advice what a person can do
 */
public record Orphan(
    String uid,
    String frame,
    String fault,
    List<PhotoWords.Line> holds,
    List<String> doubts,
    String advice) {

  public Orphan {
    holds = List.copyOf(holds);
    doubts = List.copyOf(doubts);
  }

  /** True if nothing speaks against entering it again. */
  boolean isUndoubted() {
    return fault.isEmpty() && doubts.isEmpty();
  }

  /** The same, after an attempt to enter it again. */
  Orphan notEntered(String why) {
    return new Orphan(
        uid, frame, fault, holds, List.of("It was not entered again: " + why + "."), advice);
  }
}
