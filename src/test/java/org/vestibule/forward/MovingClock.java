package org.vestibule.forward;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A clock that a test moves. */
public final class MovingClock extends Clock {

  private Instant now;

  public MovingClock() {
    this(Instant.parse("2026-03-14T02:00:00Z"));
  }

  public MovingClock(Instant start) {
    now = start;
  }

  public synchronized void move(Duration by) {
    now = now.plus(by);
  }

  @Override
  public synchronized Instant instant() {
    return now;
  }

  @Override
  public ZoneId getZone() {
    return ZoneOffset.UTC;
  }

  @Override
  public Clock withZone(ZoneId zone) {
    return this;
  }
}
