package org.vestibule.release;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Stream;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dicom.Tags;

/**
 * Makes a release beside its place, searches all of it, and gives it its name only then. Whatever
 * goes wrong, nothing is left behind.
 */
public final class ReleaseMaker {

  /** How copies are made today. A change that alters their bytes needs a new version. */
  public static final String VERSION = "2";

  private final Order order;
  private final Map<String, String> hashes = new TreeMap<>();
  private final List<SheetRow> rows = new ArrayList<>();
  private final List<Release.Item> items = new ArrayList<>();

  private ReleaseMaker(Order order) {
    this.order = order;
  }

  /**
   * Makes the release.
   *
   * @param target a folder, or a file ending in {@code .zip}; nothing may be there yet
   * @param accept may refuse the finished release
   * @param record told of the finished release before it gets its name
   */
  public static Outcome<Release> make(
      Order order,
      Path target,
      Function<Release, Outcome<Release>> accept,
      Consumer<Release> record)
      throws IOException {
    if (order.originals().isEmpty()) {
      return Outcome.refused("there is nothing to copy", "name at least one photograph");
    }
    if (order.originals().size() > PdfSheet.MOST) {
      return Outcome.refused(
          order.originals().size()
              + " photographs don't fit the one-page sheet, which holds "
              + PdfSheet.MOST,
          "make several releases");
    }
    if (order.passphrase() != null && !isZip(target)) {
      return Outcome.refused(
          "a passphrase is given, and " + target.getFileName() + " is to be a folder",
          "name a file ending in .zip: a folder can't be encrypted");
    }
    if (Files.exists(target)) {
      return Outcome.refused(
          target.getFileName() + " is already there",
          "name another place; nothing was overwritten");
    }
    Path parent = Optional.ofNullable(target.toAbsolutePath().getParent()).orElse(target);
    if (!Files.isDirectory(parent)) {
      return Outcome.refused(
          "there is no folder " + parent.getFileName() + " for the copies", "make it first");
    }
    Path draft = Files.createTempDirectory(parent, ".release-");
    try {
      return new ReleaseMaker(order).make(draft, target, accept, record);
    } finally {
      delete(draft);
    }
  }

  private static boolean isZip(Path target) {
    return target.getFileName().toString().endsWith(".zip");
  }

  private Outcome<Release> make(
      Path draft, Path target, Function<Release, Outcome<Release>> accept, Consumer<Release> record)
      throws IOException {
    Path folder = Files.createDirectory(draft.resolve("copies"));
    Outcome<Release> made = fill(folder).then(accept);
    if (made instanceof Refused<Release>) {
      return made;
    }
    Release release = made.orThrow();
    Optional<Refused<Release>> leak = prove(folder, release.files());
    if (leak.isPresent()) {
      return leak.get();
    }
    Path finished = folder;
    if (isZip(target)) {
      finished = draft.resolve("copies.zip");
      pack(folder, release, finished);
    }
    record.accept(release);
    try {
      Files.move(finished, target);
    } catch (FileAlreadyExistsException faster) {
      return Outcome.refused(
          target.getFileName() + " is already there",
          "name another place; nothing was overwritten");
    }
    return made;
  }

  private void pack(Path folder, Release release, Path zip) throws IOException {
    Passphrase passphrase = order.passphrase();
    if (passphrase == null) {
      Packed.write(folder, release.files(), zip);
      requireSame(Packed.hashes(zip));
    } else {
      Encrypted.write(folder, release.files(), zip, passphrase);
      requireSame(Encrypted.hashes(zip, passphrase));
    }
  }

  private Outcome<Release> fill(Path folder) throws IOException {
    Copies copies = new Copies(order);
    for (Original original : order.originals()) {
      String number = Integer.toString(items.size() + 1);
      String name = "copy-" + "0".repeat(Math.max(0, 2 - number.length())) + number;
      Outcome<Copies.Copy> made = copies.of(original, name);
      if (!(made instanceof Done<Copies.Copy> done)) {
        return ((Refused<Copies.Copy>) made).as();
      }
      Outcome<Boolean> written = write(folder, done.value(), name);
      if (written instanceof Refused<Boolean> refused) {
        return refused.as();
      }
      rows.add(done.value().row());
      items.add(
          new Release.Item(
              original,
              name,
              done.value().uid(),
              done.value().pseudonym(),
              done.value().attested(),
              shown(done.value(), name)));
    }
    Sheet sheet = Sheet.of(order, rows);
    write(folder, ReleaseFiles.PAGE, HtmlSheet.of(sheet, order.formats()));
    write(folder, ReleaseFiles.SHEET, PdfSheet.of(sheet, order.id().hashCode()));
    byte[] manifest = Manifest.of(order, hashes);
    write(folder, ReleaseFiles.MANIFEST, manifest);
    return Outcome.done(
        new Release(ContentHash.of(manifest).hex(), List.copyOf(hashes.keySet()), items));
  }

  private Release.Shown shown(Copies.Copy copy, String name) {
    SheetRow row = copy.row();
    return new Release.Shown(
        row.who(),
        row.when(),
        row.view(),
        row.named(),
        row.edges() == null ? List.of() : copy.data().strings(Tags.PatientOrientation),
        hashes.getOrDefault(ReleaseFiles.picture(name, Format.JPEG), ""));
  }

  private Outcome<Boolean> write(Path folder, Copies.Copy copy, String name) throws IOException {
    if (order.formats().contains(Format.DICOM)) {
      write(folder, ReleaseFiles.picture(name, Format.DICOM), copy.dicom());
    }
    if (order.formats().contains(Format.JPEG)) {
      Outcome<byte[]> jpeg = JpegCopy.of(copy.data());
      if (jpeg instanceof Refused<byte[]> refused) {
        return refused.as();
      }
      write(folder, ReleaseFiles.picture(name, Format.JPEG), jpeg.orThrow());
    }
    return Outcome.done(true);
  }

  private void write(Path folder, String name, byte[] bytes) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(Optional.ofNullable(file.getParent()).orElse(folder));
    Files.write(file, bytes);
    hashes.put(name, ContentHash.of(bytes).hex());
  }

  /** Reads every finished file back and searches it; one find stops the release. */
  private Optional<Refused<Release>> prove(Path folder, List<String> names) throws IOException {
    LeakSearch search = new LeakSearch(order.secrets());
    for (String name : names) {
      Optional<String> leak = search.find(name, Files.readAllBytes(folder.resolve(name)));
      if (leak.isPresent()) {
        return Optional.of(
            new Refused<>(
                "the finished " + leak.get() + " that must not leave",
                "nothing was handed over: leave the photograph out; if the patient, a dentist or the"
                    + " practice is called like a word on the sheet, tell who looks after this program",
                Outcome.Kind.DAMAGE));
      }
    }
    return Optional.empty();
  }

  /** The ZIP holds exactly the files that were searched. */
  private void requireSame(Map<String, String> packed) throws IOException {
    if (!packed.equals(hashes)) {
      throw new IOException("the packed copies are not those that were searched");
    }
  }

  private static void delete(Path folder) throws IOException {
    List<Path> all;
    try (Stream<Path> walk = Files.walk(folder)) {
      all = walk.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path path : all) {
      Files.deleteIfExists(path);
    }
  }
}
