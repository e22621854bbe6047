package org.vestibule.base;

import java.util.function.Function;

/**
 * The result of a step that can be refused for a reason a person should read.
 *
 * <p>Exceptions are for broken files, broken machines and bugs; a refusal is an ordinary value.
 */
public sealed interface Outcome<T> {

  /** The step was done. */
  record Done<T>(T value) implements Outcome<T> {}

  /**
   * The step was refused.
   *
   * @param reason what was found and what was expected, with the place
   * @param advice what the person can do next
   * @param kind what stands in the way
   */
  record Refused<T>(String reason, String advice, Kind kind) implements Outcome<T> {

    /** A refusal of what was asked for. */
    public Refused(String reason, String advice) {
      this(reason, advice, Kind.REQUEST);
    }

    /** The same refusal where another kind of value was asked for. */
    public <U> Refused<U> as() {
      return new Refused<>(reason, advice, kind);
    }

    /** Reason and advice as one line. */
    public String sentence() {
      return reason + ": " + advice;
    }
  }

  /** What stands in the way of a refused step. */
  enum Kind {
    /** What was asked for can't be done as it was said. */
    REQUEST,
    /** Another run is at work; later it may be done. */
    BUSY,
    /** What is stored is damaged or missing. */
    DAMAGE
  }

  static <T> Outcome<T> done(T value) {
    return new Done<>(value);
  }

  static <T> Outcome<T> refused(String reason, String advice) {
    return new Refused<>(reason, advice);
  }

  /** A refusal because of what stands in the way. */
  static <T> Outcome<T> refused(Kind kind, String reason, String advice) {
    return new Refused<>(reason, advice, kind);
  }

  /** Applies a step to the value of a done outcome; a refusal passes through. */
  default <U> Outcome<U> map(Function<? super T, ? extends U> step) {
    if (this instanceof Done<T> done) {
      return new Done<>(step.apply(done.value()));
    }
    return ((Refused<T>) this).as();
  }

  /** Applies a step that can itself be refused; a refusal passes through. */
  default <U> Outcome<U> then(Function<? super T, Outcome<U>> step) {
    if (this instanceof Done<T> done) {
      return step.apply(done.value());
    }
    return ((Refused<T>) this).as();
  }

  /**
   * The value of an outcome that must have been done.
   *
   * @throws IllegalStateException with the refusal's words if it was refused
   */
  default T orThrow() {
    if (this instanceof Done<T> done) {
      return done.value();
    }
    throw new IllegalStateException(((Refused<T>) this).sentence());
  }
}
