package org.vestibule.web;

import java.util.HashMap;
import java.util.Map;

/**
 * Counts the requests that are being answered, so that nobody who hangs on the line holds all
 * threads: so many of one session, so many of one stranger's address, so many of all strangers.
 */
final class AtOnce {

  /** A browser has six connections to a server at most (common practice, no source). */
  static final int OF_A_SESSION = 12;

  static final int OF_AN_ADDRESS = 8;
  private static final int OF_STRANGERS = 24;

  /** Threads, so that strangers and two such sessions leave some to others. */
  static final int THREADS = 64;

  private static final String STRANGERS = "strangers";

  private final Map<String, Integer> busy = new HashMap<>();

  /** Lets a request in; false if too many are being answered, and then nothing is to be left. */
  synchronized boolean enter(Visitor visitor, String client) {
    String who = who(visitor, client);
    boolean stranger = visitor.session().isEmpty();
    if (count(who) >= (stranger ? OF_AN_ADDRESS : OF_A_SESSION)
        || (stranger && count(STRANGERS) >= OF_STRANGERS)) {
      return false;
    }
    busy.merge(who, 1, Integer::sum);
    if (stranger) {
      busy.merge(STRANGERS, 1, Integer::sum);
    }
    return true;
  }

  /** Ends what was let in; the visitor as it was then. */
  synchronized void leave(Visitor visitor, String client) {
    less(who(visitor, client));
    if (visitor.session().isEmpty()) {
      less(STRANGERS);
    }
  }

  private int count(String who) {
    return busy.getOrDefault(who, 0);
  }

  private void less(String who) {
    busy.computeIfPresent(who, (any, count) -> count == 1 ? null : count - 1);
  }

  private static String who(Visitor visitor, String client) {
    return visitor.session().map(session -> "session " + session.mark()).orElse("at " + client);
  }
}
