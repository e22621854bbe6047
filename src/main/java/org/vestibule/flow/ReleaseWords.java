package org.vestibule.flow;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.vestibule.release.Format;
import org.vestibule.words.Language;

/**
 * Copies as a person asks for them.
 *
 * @param purpose a purpose's key
 * @param photos ids of photographs
 * @param recipient for whom
 * @param askedBy who asked
 * @param why in the words of who asked
 * @param lookedBy who looked at each picture; empty if nobody did
 * @param severalPatients true if photographs of several patients are meant to go together
 * @param crops by id, the part of a photograph that may leave: four fractions of the picture as it
 *     is filed
 * @param target a new folder or ZIP file
 * @param passphrase the file with the passphrase; null if the copies are not to be encrypted
 * @param language of the sheet
 */
public record ReleaseWords(
    String purpose,
    List<String> photos,
    String recipient,
    String askedBy,
    String why,
    String lookedBy,
    boolean severalPatients,
    Map<String, String> crops,
    Set<Format> formats,
    Path target,
    @Nullable Path passphrase,
    Language language) {
  public ReleaseWords {
    photos = List.copyOf(photos);
    crops = Map.copyOf(crops);
    formats = Set.copyOf(formats);
  }
}
