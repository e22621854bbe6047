package org.vestibule.flow;

import java.util.List;

/**
 * What a person wants to share, as they ask for it.
 *
 * @param purpose a release purpose's key
 * @param photos ids of photographs
 * @param recipient for whom
 * @param askedBy who asked
 * @param why in a few words
 * @param lookedBy who looked at each picture; empty if nobody did
 */
public record ShareWords(
    String purpose,
    List<String> photos,
    String recipient,
    String askedBy,
    String why,
    String lookedBy) {
  public ShareWords {
    photos = List.copyOf(photos);
  }
}
