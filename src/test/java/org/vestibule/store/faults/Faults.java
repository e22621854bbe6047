package org.vestibule.store.faults;

import java.io.IOException;
import java.util.concurrent.atomic.AtomicInteger;

/** Decides which deeds fail. */
@FunctionalInterface
public interface Faults {

  /** Lets everything be done. */
  Faults NONE = deed -> {};

  /**
   * Told of a deed before it is done.
   *
   * @throws IOException to make it fail
   */
  void before(Deed deed) throws IOException;

  /** Makes an exception for a deed. */
  @FunctionalInterface
  interface Failure {
    IOException of(Deed deed);
  }

  /** Lets this kind of deed fail the first so many times. */
  static Faults first(int times, Deed.Kind kind, Failure failure) {
    AtomicInteger left = new AtomicInteger(times);
    return deed -> {
      if (deed.kind() == kind && left.getAndDecrement() > 0) {
        throw failure.of(deed);
      }
    };
  }

  /** Lets this kind of deed fail always. */
  static Faults always(Deed.Kind kind, Failure failure) {
    return first(Integer.MAX_VALUE, kind, failure);
  }

  /** Both together. */
  default Faults and(Faults other) {
    return deed -> {
      before(deed);
      other.before(deed);
    };
  }
}
