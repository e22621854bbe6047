package org.vestibule.cli;

import org.vestibule.base.Outcome;

/** How a command ends, for scripts and schedulers; the table stands in docs/operations.md. */
enum ExitCode {
  /** Everything asked for was done. */
  DONE(0),
  /** Done, and something needs a person: photographs wait, or a check has findings. */
  NEEDS_A_PERSON(1),
  /** The command line or the settings file is wrong; nothing was changed. */
  WRONG_USE(2),
  /** The request was understood and refused; nothing was changed. */
  REFUSED(3),
  /** What is stored is damaged, or something is missing. */
  DAMAGE(4),
  /** Another run is at work in this home folder. */
  BUSY(5),
  /** The machine failed: disk full, folder not readable or not writable. */
  MACHINE(6),
  /** A defect in Vestibule itself. */
  BUG(70);

  private final int number;

  ExitCode(int number) {
    this.number = number;
  }

  /** How a command ends that was refused for this. */
  static ExitCode of(Outcome.Kind kind) {
    return switch (kind) {
      case REQUEST -> REFUSED;
      case BUSY -> BUSY;
      case DAMAGE -> DAMAGE;
    };
  }

  int number() {
    return number;
  }
}
