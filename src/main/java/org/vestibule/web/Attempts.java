package org.vestibule.web;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.Map;

/** Counts failures under a name within a span of time, for so many names at most. */
final class Attempts {

  private static final int MOST_NAMES = 10_000;

  private final int most;
  private final Duration within;
  private final Clock clock;
  private final Map<String, Deque<Instant>> failures =
      new LinkedHashMap<>() {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Deque<Instant>> eldest) {
          return size() > MOST_NAMES;
        }
      };

  Attempts(int most, Duration within, Clock clock) {
    this.most = most;
    this.within = within;
    this.clock = clock;
  }

  /** True if there were too many; the caller refuses without looking further. */
  synchronized boolean tooMany(String name) {
    return recent(name).size() >= most;
  }

  synchronized void failed(String name) {
    Deque<Instant> recent = recent(name);
    recent.addLast(clock.instant());
    if (recent.size() > most) {
      recent.removeFirst();
    }
    failures.put(name, recent);
  }

  synchronized void succeeded(String name) {
    failures.remove(name);
  }

  private Deque<Instant> recent(String name) {
    Deque<Instant> all = failures.getOrDefault(name, new ArrayDeque<>());
    Instant since = clock.instant().minus(within);
    while (!all.isEmpty() && all.getFirst().isBefore(since)) {
      all.removeFirst();
    }
    return all;
  }
}
