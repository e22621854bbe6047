package org.vestibule.simulator;

import java.util.Optional;

/** Puts one fault into a day. */
@FunctionalInterface
interface Injector {

  /** What went wrong, as half a sentence; empty if this day gives no occasion for it. */
  Optional<String> inject(Plan plan, Dice dice);
}
