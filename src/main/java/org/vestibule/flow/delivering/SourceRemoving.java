package org.vestibule.flow.delivering;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome.Done;
import org.vestibule.encode.Role;
import org.vestibule.flow.Practice;
import org.vestibule.forward.DestinationRules;
import org.vestibule.forward.ForwardRules.SourceRemoval;
import org.vestibule.store.RunLock;
import org.vestibule.store.ledger.DeliveryRow;
import org.vestibule.store.ledger.DeliveryState;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.KeptObject;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.SeenFile;

/**
 * Removes photographs' files from the inbox where the settings want it: only what is filed whole,
 * whose objects are sound here, and which every required archive has confirmed.
 */
final class SourceRemoving {

  private final Practice practice;
  private final Ledger ledger;
  private final Path inbox;

  SourceRemoving(Practice practice) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
    this.inbox = practice.settings().inbox();
  }

  /** Removes what may go, and says how many files that were. */
  @SuppressWarnings("try") // the lock is held, not used
  int run(List<String> warnings) throws IOException {
    List<String> required =
        practice.settings().forward().destinations().stream()
            .filter(DestinationRules::required)
            .map(DestinationRules::name)
            .toList();
    if (practice.settings().forward().removal() == SourceRemoval.NEVER
        || required.isEmpty()
        || !Files.isDirectory(inbox)) {
      return 0;
    }
    if (!(practice.store().lock("forward") instanceof Done<RunLock> free)) {
      return 0; // another run reads the inbox; the next delivery removes it
    }
    try (RunLock lock = free.value();
        Stream<Path> files = Files.walk(inbox)) {
      int removed = 0;
      for (Path file : files.filter(SourceRemoving::isFile).toList()) {
        removed += removed(file, required, warnings) ? 1 : 0;
      }
      return removed;
    } catch (UncheckedIOException unreadable) {
      warnings.add(
          "the inbox could not be looked through for photographs that may leave it: see who may read"
              + " its folders");
      return 0;
    }
  }

  private static boolean isFile(Path file) {
    return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS);
  }

  /** What can't be read stays: nothing leaves the inbox that was not looked at to the last byte. */
  private boolean removed(Path file, List<String> required, List<String> warnings) {
    String name =
        inbox.relativize(file).toString().replace(file.getFileSystem().getSeparator(), "/");
    Optional<SeenFile> seen =
        ledger.arrivals().named(name).stream().filter(one -> hasSize(file, one)).findFirst();
    if (seen.isEmpty()) {
      return false;
    }
    ContentHash hash = seen.get().hash();
    try {
      FileTime changed = Files.getLastModifiedTime(file);
      if (!mayGo(hash, required)
          || !ContentHash.of(Files.readAllBytes(file)).equals(hash)
          || !Files.getLastModifiedTime(file).equals(changed)
          || !hasSize(file, seen.get())) {
        return false; // not yet, or another photograph has the name now
      }
      Files.delete(file);
    } catch (IOException e) {
      warnings.add(
          "a photograph that every archive has confirmed could not be removed from the inbox ("
              + e.getClass().getSimpleName()
              + ")");
      return false;
    }
    ledger.deliveries().removed(hash, name);
    return true;
  }

  private static boolean hasSize(Path file, SeenFile seen) {
    return file.toFile().length() == seen.sizeBytes();
  }

  private boolean mayGo(ContentHash hash, List<String> required) throws IOException {
    List<Intent> current = ledger.intents().current(hash);
    if (current.isEmpty() || !ledger.intents().unfinished(hash).isEmpty()) {
      return false;
    }
    List<DeliveryRow> deliveries = ledger.deliveries().of(hash);
    for (Intent intent : current) {
      if (!isWhole(intent)
          || !required.stream().allMatch(name -> isConfirmed(deliveries, name, intent))
          || !isSound(intent)) {
        return false;
      }
    }
    return true;
  }

  private static boolean isConfirmed(List<DeliveryRow> rows, String destination, Intent intent) {
    return rows.stream()
        .anyMatch(
            row ->
                row.destination().equals(destination)
                    && intent.sopUid().equals(row.sopUid())
                    && row.state() == DeliveryState.CONFIRMED);
  }

  /** Of a photograph whose picture was trimmed or salvaged, the file holds more than the object. */
  private boolean isWhole(Intent intent) {
    if (intent.role() != Role.FRAME) {
      return true;
    }
    KeptObject kept = ledger.kept().find(intent.sopUid()).orElseThrow();
    return kept.trimmedColumns() == 0
        && kept.trimmedRows() == 0
        && ledger
            .decisions()
            .find(intent.decisionId())
            .filter(decision -> !decision.json().contains("\"maySalvage\":true"))
            .isPresent();
  }

  private boolean isSound(Intent intent) throws IOException {
    KeptObject kept = ledger.kept().find(intent.sopUid()).orElseThrow();
    Optional<byte[]> bytes = practice.store().objects().get(intent.sopUid());
    return bytes.isPresent() && ContentHash.of(bytes.get()).equals(kept.fileHash());
  }
}
