package org.vestibule.simulator;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import org.jspecify.annotations.Nullable;

/** A file on its way into the inbox. */
final class RollFile {

  final Shot shot;
  String folder;
  String name;
  @Nullable LocalDateTime takenAt;
  @Nullable ZoneOffset offset;
  @Nullable String subsecond;
  Instant fileTime;
  boolean edited;
  String content;
  int run = 1;

  RollFile(Shot shot, String folder, String name, Instant fileTime, String content) {
    this.shot = shot;
    this.folder = folder;
    this.name = name;
    this.fileTime = fileTime;
    this.content = content;
  }

  /** The same file once more under another name. */
  RollFile copy(String newName) {
    RollFile copy = new RollFile(shot, folder, newName, fileTime, content);
    copy.takenAt = takenAt;
    copy.offset = offset;
    copy.subsecond = subsecond;
    copy.edited = edited;
    copy.run = run;
    return copy;
  }

  SeenPhoto seen() {
    return new SeenPhoto(
        folder,
        name,
        shot.phone.make,
        shot.phone.model,
        shot.phone.lens,
        takenAt,
        offset,
        subsecond,
        fileTime,
        edited,
        shot.sighting,
        content,
        run);
  }
}
