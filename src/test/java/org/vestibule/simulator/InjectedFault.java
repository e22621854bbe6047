package org.vestibule.simulator;

/**
 * A fault and where it was put.
 *
 * @param what what went wrong, as half a sentence with visit keys and numbers
 */
public record InjectedFault(Fault fault, String what) {

  @Override
  public String toString() {
    return fault.words() + " (" + what + ")";
  }
}
