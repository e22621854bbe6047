package org.vestibule.web;

import java.io.IOException;

/** Turns what was asked into an answer; called by several threads at once. */
@FunctionalInterface
interface Page {

  /**
   * The answer.
   *
   * @throws IOException if the machine failed; the gate turns it into a page in words
   */
  Answer answer(Asked asked) throws IOException;
}
