package org.vestibule.release;

import java.time.LocalDate;
import java.util.Set;

/**
 * What is known of patients, visits, practice and devices and must not be in a set of copies.
 *
 * @param texts names, numbers, UIDs, file names
 * @param days in any spelling
 */
public record Secrets(Set<String> texts, Set<LocalDate> days) {
  public Secrets {
    texts = Set.copyOf(texts);
    days = Set.copyOf(days);
  }
}
