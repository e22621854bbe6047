package org.vestibule.release;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.vestibule.words.Language;

/**
 * What copies are to be made, after everything about consent was settled.
 *
 * @param id of the release, such as {@code 2026-001}
 * @param recipient for whom
 * @param practice its name; empty if it has none
 * @param day on which they are made, on the practice's clock
 * @param lookedBy who looked at each picture and found no text that names anybody, and no face
 *     where none is meant to be; empty if nobody did
 * @param pseudonyms made with the key of this set
 * @param secrets what must not be found in the copies
 * @param passphrase encrypts them; null if they are not to be encrypted
 * @param language of the sheet
 */
public record Order(
    String id,
    Purpose purpose,
    String recipient,
    String practice,
    LocalDate day,
    Set<Format> formats,
    String lookedBy,
    Pseudonyms pseudonyms,
    List<Original> originals,
    Secrets secrets,
    @Nullable Passphrase passphrase,
    Language language) {

  public Order {
    formats = Set.copyOf(formats);
    originals = List.copyOf(originals);
  }
}
