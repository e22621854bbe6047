package org.vestibule.simulator;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import org.jspecify.annotations.Nullable;
import org.vestibule.card.CardSighting;

/**
 * A file as the program sees it.
 *
 * @param folder folder below the inbox with slashes, empty for the inbox itself
 * @param takenAt time on the phone's clock, with the fraction of a second if the phone writes one;
 *     null if the file doesn't say
 * @param offset the clock's offset from UTC, only if the file states it
 * @param subsecond digits after the decimal point of the second as written, or null
 * @param fileTime when the file was last written
 * @param edited true if the file carries traces of a program that changed it
 * @param content stands for the content hash: the same for files with the same bytes
 * @param run the run in which the file arrived, from 1
 */
public record SeenPhoto(
    String folder,
    String fileName,
    String make,
    String model,
    @Nullable String lens,
    @Nullable LocalDateTime takenAt,
    @Nullable ZoneOffset offset,
    @Nullable String subsecond,
    Instant fileTime,
    boolean edited,
    CardSighting sighting,
    String content,
    int run) {

  /** Names the file within its day: its path below the inbox. */
  public String key() {
    return folder.isEmpty() ? fileName : folder + "/" + fileName;
  }
}
