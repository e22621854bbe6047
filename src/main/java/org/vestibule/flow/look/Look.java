package org.vestibule.flow.look;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.vestibule.base.Outcome;
import org.vestibule.intake.Intake;
import org.vestibule.intake.LeftOutKind;
import org.vestibule.intake.Roll;

/**
 * Looks at a folder and writes a sheet and a manifest. It needs no set-up and changes nothing in
 * the folder. An older sheet is replaced; a manifest, in which a person may have written, never is.
 */
public final class Look {

  private final Path folder;
  private final Path sheet;
  private final Path manifest;
  private final LookRules rules;
  private final Clock clock;

  private Look(Path folder, Path sheet, Path manifest, LookRules rules, Clock clock) {
    this.folder = folder;
    this.sheet = sheet;
    this.manifest = manifest;
    this.rules = rules;
    this.clock = clock;
  }

  /**
   * Looks at a folder.
   *
   * @param folder what is looked at
   * @param sheet the HTML page to be written
   * @param manifest the CSV to be written
   * @param rules how
   * @param clock gives the day on the sheet, in its zone
   * @throws IOException if the page or the list can't be written
   */
  public static Outcome<Looked> make(
      Path folder, Path sheet, Path manifest, LookRules rules, Clock clock) throws IOException {
    Look look = new Look(folder, sheet, manifest, rules, clock);
    Optional<Outcome<Looked>> refusal = look.refusal();
    return refusal.isPresent() ? refusal.get() : look.make();
  }

  private Optional<Outcome<Looked>> refusal() throws IOException {
    if (!Files.isDirectory(folder)) {
      return refuse(
          "there is no folder of this name", "check the name, and that the drive is connected");
    }
    if (Files.exists(manifest)) {
      return refuse(
          "the manifest "
              + last(manifest)
              + " is already there, perhaps with somebody's work in it",
          "name another file, or move this one away");
    }
    if (SheetFile.free(sheet) instanceof Outcome.Refused<Path> taken) {
      return Optional.of(taken.as());
    }
    if (!rules.mayWriteInside() && (isInside(sheet) || isInside(manifest))) {
      return refuse(
          "the sheet and the manifest would be written into the folder that is looked at",
          "run it from another folder, or say where they shall go");
    }
    return Optional.empty();
  }

  private Outcome<Looked> make() throws IOException {
    Roll roll = Intake.read(folder, rules.intake(), clock);
    List<Sitting> sittings = Sitting.of(roll.photos(), rules.sittingGap());
    Sheet page = LookSheet.of(last(folder.toRealPath()), roll, sittings, LocalDate.now(clock));
    try {
      SheetFile.write(page, sheet, () -> writeManifest(sittings));
    } catch (FileAlreadyExistsException e) {
      return Outcome.refused(
          "another program wrote the manifest " + last(manifest) + " meanwhile",
          "name another file");
    }
    int person =
        (int)
            roll.leftOut().stream()
                .map(left -> left.kind())
                .filter(LeftOutKind::needsPerson)
                .count();
    return Outcome.done(
        new Looked(
            roll.photos().size(), sittings.size(), roll.leftOut().size(), person, sheet, manifest));
  }

  private void writeManifest(List<Sitting> sittings) throws IOException {
    Files.writeString(
        manifest,
        ManifestDraft.of(sittings),
        StandardCharsets.UTF_8,
        StandardOpenOption.CREATE_NEW);
  }

  private boolean isInside(Path file) throws IOException {
    Path parent = file.toAbsolutePath().normalize().getParent();
    return parent != null
        && Files.isDirectory(parent)
        && parent.toRealPath().startsWith(folder.toRealPath());
  }

  private static Optional<Outcome<Looked>> refuse(String reason, String advice) {
    return Optional.of(Outcome.refused(reason, advice));
  }

  private static String last(Path path) {
    Path name = path.getFileName();
    return name == null ? path.toString() : name.toString();
  }
}
