package org.vestibule.release;

import java.time.LocalDate;
import java.util.Set;

/**
 * What is known of patients, visits, practice and devices and must not be in a set of copies.
 *
 * @param texts names, numbers, UIDs, file names
 * @param days in any spelling
 * @param bytes such as a position in Exif has them, in hexadecimal digits
 */
public record Secrets(Set<String> texts, Set<LocalDate> days, Set<String> bytes) {
  public Secrets {
    texts = Set.copyOf(texts);
    days = Set.copyOf(days);
    bytes = Set.copyOf(bytes);
  }

  public Secrets(Set<String> texts, Set<LocalDate> days) {
    this(texts, days, Set.of());
  }
}
