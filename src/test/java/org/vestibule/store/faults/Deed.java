package org.vestibule.store.faults;

import java.nio.file.Path;
import java.util.Locale;

/**
 * Something that a program is about to do to a file.
 *
 * @param file the file, or the folder
 */
public record Deed(Kind kind, Path file) {

  /** What is about to be done. */
  public enum Kind {
    CREATE,
    OPEN,
    WRITE,
    FORCE,
    LINK,
    MOVE,
    DELETE,
    LIST
  }

  /** Kind and last part of the name, with the digits of a temporary name left out. */
  @Override
  public String toString() {
    String name = String.valueOf(file.getFileName()).replaceAll("-[0-9]+\\.part$", "-N.part");
    return kind.name().toLowerCase(Locale.ROOT) + " " + name;
  }
}
