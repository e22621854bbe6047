package org.vestibule.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.vestibule.base.ContentHash;
import org.vestibule.base.FileBytes;

/**
 * Reads a folder: settled files become hashed arrivals and then photographs; everything else is
 * left out with its reason. One file is held in memory at a time, and nothing in the folder is
 * changed.
 */
public final class Intake {

  /** Takes a photograph while its bytes are in memory, so that nobody needs to read them again. */
  @FunctionalInterface
  public interface AtHand {

    /**
     * A photograph was read.
     *
     * @param bytes its file's bytes, whose hash its arrival tells; nobody may write into them
     * @param before how many of the folder's files were gone through before it
     * @param of how many there are
     */
    void photo(Photo photo, byte[] bytes, int before, int of);
  }

  private final IntakeRules rules;
  private final AtHand atHand;
  private final Settling settling;
  private final List<Photo> photos = new ArrayList<>();
  private final List<LeftOut> leftOut = new ArrayList<>();
  private final Map<ContentHash, String> seen = new HashMap<>();
  private int before;
  private int of;

  private Intake(IntakeRules rules, Clock clock, AtHand atHand) {
    this.rules = rules;
    this.atHand = atHand;
    this.settling = new Settling(rules.settle(), clock);
  }

  /**
   * Reads a folder and its subfolders in the order of their names.
   *
   * @param folder the folder with the photographs
   * @param rules how files are taken
   * @param clock tells how long ago a file changed
   */
  public static Roll read(Path folder, IntakeRules rules, Clock clock) {
    return read(folder, rules, clock, (photo, bytes, before, of) -> {});
  }

  /**
   * The same, where each photograph is used as soon as it is read; what that throws ends the
   * reading.
   */
  public static Roll read(Path folder, IntakeRules rules, Clock clock, AtHand atHand) {
    Intake intake = new Intake(rules, clock, atHand);
    FolderWalk walk = FolderWalk.of(folder);
    intake.of = walk.files().size();
    intake.leftOut.addAll(walk.leftOut());
    Neighbours neighbours = Neighbours.of(walk.files());
    // A copy's name must not win over the original's where both hold the same bytes.
    Predicate<FoundFile> copy = file -> neighbours.copyOf(file.name()).isPresent();
    walk.files().stream().filter(copy.negate()).forEach(file -> intake.take(file, neighbours));
    walk.files().stream().filter(copy).forEach(file -> intake.take(file, neighbours));
    Map<String, Integer> place = new HashMap<>();
    walk.files().forEach(file -> place.put(file.name(), place.size()));
    intake.photos.sort(Comparator.comparing(photo -> place.get(photo.arrival().name())));
    intake.leftOut.sort(Comparator.comparing(LeftOut::name));
    return new Roll(intake.photos, intake.leftOut);
  }

  private void take(FoundFile file, Neighbours neighbours) {
    before++;
    Optional<LeftOut> without =
        NameRules.leaveOut(file, neighbours)
            .or(() -> settling.unfinished(file))
            .or(() -> settling.tooFresh(file));
    if (without.isPresent()) {
      leftOut.add(without.get());
      return;
    }
    try {
      read(file, neighbours);
    } catch (IOException e) {
      leftOut.add(
          file.leave(
              LeftOutKind.UNREADABLE,
              "it can't be read (" + Failures.words(e) + ")",
              "check the rights on the file and that the drive is connected"));
    }
  }

  private void read(FoundFile file, Neighbours neighbours) throws IOException {
    if (file.sizeBytes() == 0) {
      leftOut.add(
          file.leave(
              LeftOutKind.EMPTY,
              "it is empty (0 bytes)",
              "if its copy or download is still running it will be taken later; otherwise copy it"
                  + " from the phone again"));
      return;
    }
    FileKind kind = FileKind.of(head(file.path()));
    Optional<LeftOut> unfit = KindRules.leaveOut(file, kind, neighbours, rules);
    if (unfit.isPresent()) {
      leftOut.add(unfit.get());
      return;
    }
    byte[] bytes = FileBytes.upTo(file.path(), file.sizeBytes());
    Optional<LeftOut> changed = settling.changedSince(file, bytes.length);
    if (changed.isPresent()) {
      leftOut.add(changed.get());
      return;
    }
    take(file, kind, bytes, neighbours);
  }

  private void take(FoundFile file, FileKind kind, byte[] bytes, Neighbours neighbours) {
    ContentHash hash = ContentHash.of(bytes);
    String first = seen.putIfAbsent(hash, file.name());
    if (first != null) {
      leftOut.add(
          new LeftOut(
              file.name(),
              LeftOutKind.DUPLICATE,
              "it has the same bytes as " + FileNames.shown(first),
              "only the first is taken; nothing needs to be done",
              hash));
      return;
    }
    if (kind == FileKind.HEIF) {
      leftOut.add(HeifReader.leftOut(file, bytes, hash));
      return;
    }
    Arrival arrival =
        new Arrival(file.path(), file.name(), file.sizeBytes(), file.modified(), hash);
    PhotoReader reader = new PhotoReader(arrival, bytes, neighbours);
    Optional<Photo> photo = reader.read();
    if (photo.isEmpty()) {
      leftOut.add(reader.refusal());
      return;
    }
    photos.add(photo.get());
    atHand.photo(photo.get(), bytes, before - 1, of);
  }

  private static byte[] head(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return in.readNBytes(FileKind.HEAD_BYTES);
    }
  }
}
