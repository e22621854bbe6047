package org.vestibule.flow.keeping;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.stream.Stream;

/** The page {@code backup.txt}, which tells people what a backup folder holds. */
final class BackupText {

  static final String NAME = "backup.txt";

  private static final String MARK = "Mark of the secret: ";

  private static final String PAGE =
      """
      Backup of a dental practice's photographs. It holds patients' data: keep it locked away.

      Made by: {program}
      Practice: {practice}
      Newest snapshot: {newest}
      Finished: {finished}
      Snapshots here: {snapshots}
      Objects in the newest snapshot: {objects}, together {bytes} bytes
      {mark}

      objects/      the photographs, as DICOM files; shared by all snapshots
      snapshots/    for each moment the ledger, the settings and the lists

      Not in here: the index (it is made again from the ledger), the inbox, and the practice's
      secret. The secret is kept apart; whoever restores this backup needs it. The mark above tells
      the right secret from others and says nothing about it.

      How to restore: vestibule restore --from THIS-FOLDER --secret FILE --home NEW-FOLDER
      """;

  private BackupText() {}

  static byte[] of(
      String program,
      String practice,
      String mark,
      Instant at,
      String newest,
      int snapshots,
      int objects,
      long bytes) {
    return PAGE.replace("{program}", program)
        .replace("{practice}", practice)
        .replace("{newest}", newest)
        .replace("{finished}", at.truncatedTo(ChronoUnit.SECONDS).toString())
        .replace("{snapshots}", Integer.toString(snapshots))
        .replace("{objects}", Integer.toString(objects))
        .replace("{bytes}", Long.toString(bytes))
        .replace("{mark}", MARK + mark)
        .getBytes(StandardCharsets.UTF_8);
  }

  /** True for a draft of the page that a backup left when it was interrupted. */
  static boolean isDraft(Path file) {
    String name = String.valueOf(file.getFileName());
    return name.startsWith(NAME + "-") && name.endsWith(SafeCopy.PART);
  }

  /** Removes drafts that interrupted backups left. */
  static void clearInterrupted(Path backup) throws IOException {
    if (!Files.isDirectory(backup)) {
      return;
    }
    try (Stream<Path> inside = Files.list(backup)) {
      for (Path draft : inside.filter(BackupText::isDraft).toList()) {
        Files.deleteIfExists(draft);
      }
    }
  }

  /** The mark of the secret that belongs to a backup folder; empty if it holds no backup. */
  static Optional<String> mark(Path backup) throws IOException {
    Path file = backup.resolve(NAME);
    if (!Files.isRegularFile(file)) {
      return Optional.empty();
    }
    String text = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
    return text.lines()
        .filter(line -> line.startsWith(MARK))
        .map(line -> line.substring(MARK.length()).strip())
        .findFirst();
  }
}
