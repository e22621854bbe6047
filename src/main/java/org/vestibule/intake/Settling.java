package org.vestibule.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;

/** Says whether a file has come to rest: nobody is still copying, downloading or saving it. */
final class Settling {

  private static final Set<String> PARTIAL =
      Set.of("part", "partial", "crdownload", "download", "tmp", "temp", "filepart", "opdownload");

  private final Duration settle;
  private final Clock clock;

  Settling(Duration settle, Clock clock) {
    this.settle = settle;
    this.clock = clock;
  }

  /** A partial copy or a cloud placeholder, by its name or attributes. */
  Optional<LeftOut> unfinished(FoundFile file) {
    String last = FileNames.last(file.name());
    String extension = FileNames.extension(file.name());
    if (PARTIAL.contains(extension) || last.endsWith("~") || last.startsWith("~$")) {
      return Optional.of(
          file.leave(
              LeftOutKind.PARTIAL_COPY,
              "its name says that a program is still writing it",
              "it is looked at again on the next run; if it stays, delete it and copy again"));
    }
    if (extension.equals("icloud") || CloudAttributes.mustBeFetched(file.path())) {
      return Optional.of(
          file.leave(
              LeftOutKind.CLOUD_PLACEHOLDER,
              "only its name is here, the picture itself is still in cloud storage",
              "open the folder and let it download; it is taken on the next run"));
    }
    return Optional.empty();
  }

  /** A file that changed less than the settling time ago. */
  Optional<LeftOut> tooFresh(FoundFile file) {
    if (settle.isZero()) {
      return Optional.empty();
    }
    Instant now = clock.instant();
    if (file.modified().isAfter(now)) {
      return Optional.of(
          file.leave(
              LeftOutKind.NOT_SETTLED,
              "its time of change lies in the future, so nobody can say whether it has settled",
              "check the clock of this computer; the file is looked at again on the next run"));
    }
    if (file.modified().isAfter(now.minus(settle))) {
      return Optional.of(
          file.leave(
              LeftOutKind.NOT_SETTLED,
              "it was changed less than " + settle.toSeconds() + " seconds ago",
              "it is looked at again on the next run"));
    }
    return Optional.empty();
  }

  /** A file whose size or time is no longer what it was before its bytes were read. */
  Optional<LeftOut> changedSince(FoundFile before, long bytesRead) throws IOException {
    BasicFileAttributes now = Files.readAttributes(before.path(), BasicFileAttributes.class);
    if (now.size() == before.sizeBytes()
        && bytesRead == before.sizeBytes()
        && now.lastModifiedTime().toInstant().equals(before.modified())) {
      return Optional.empty();
    }
    return Optional.of(
        before.leave(
            LeftOutKind.NOT_SETTLED,
            "it changed while it was read",
            "it is looked at again on the next run"));
  }
}
