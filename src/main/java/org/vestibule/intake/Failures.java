package org.vestibule.intake;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;

/** A failed read in words that hold no path: a path may hold a patient's name. */
final class Failures {

  private Failures() {}

  static String words(IOException failure) {
    if (failure instanceof NoSuchFileException) {
      return "it is no longer there";
    }
    if (failure instanceof AccessDeniedException) {
      return "access is denied";
    }
    if (failure instanceof FileSystemLoopException) {
      return "it leads back to itself";
    }
    if (failure instanceof NotDirectoryException) {
      return "it is not a folder";
    }
    return "the system reports " + failure.getClass().getSimpleName();
  }
}
