package org.vestibule.web;

/** A page needed more memory than there was; what it had taken is free again. */
final class NoMemory extends RuntimeException {

  private static final long serialVersionUID = 1L;

  NoMemory(OutOfMemoryError cause) {
    super("a page needed more memory than is free", cause);
  }
}
