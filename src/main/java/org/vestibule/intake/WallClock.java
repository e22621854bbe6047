package org.vestibule.intake;

/** What a photograph's time means on the clock of a site. */
public enum WallClock {
  /** The photograph has no time. */
  NO_TIME("it has no time"),
  /** One moment and no other. */
  CLEAR("its time is clear"),
  /** No zone, and the clock showed this time twice (the doubled hour of autumn). */
  DOUBLED("its time fell in the doubled hour when clocks were set back, and it has no zone"),
  /** No zone, and the clock never showed this time (the missing hour of spring). */
  SKIPPED("its time fell in the hour that was skipped when clocks were set forward"),
  /** It has a zone, but not the site's: the phone was set to another one. */
  OTHER_ZONE("the phone's clock was set to another time zone than the site's");

  private final String words;

  WallClock(String words) {
    this.words = words;
  }

  /** The finding in words. */
  public String words() {
    return words;
  }
}
