package org.vestibule.flow;

/** Told how far a long run is. */
@FunctionalInterface
public interface Progress {

  /** Tells nobody. */
  Progress NONE = (done, of, name) -> {};

  /**
   * A photograph is being worked on.
   *
   * @param done how many are done
   * @param of how many there are
   * @param name of the file
   */
  void at(int done, int of, String name);

  /** False if no further photograph is to be begun; the rest is left for another run. */
  default boolean mayGoOn() {
    return true;
  }
}
