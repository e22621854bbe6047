package org.vestibule.flow.phone;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.vestibule.base.Synced;
import org.vestibule.store.ledger.Uploads;

/** Gives whole files their place in the inbox: in one step, and never over another file. */
final class InboxPlace {

  private static final String FOLDER = "phone";

  private final Path inbox;
  private final Uploads uploads;

  InboxPlace(Path inbox, Uploads uploads) {
    this.inbox = inbox;
    this.uploads = uploads;
  }

  static long free(Path inbox) throws IOException {
    return Files.getFileStore(inbox).getUsableSpace();
  }

  /** A name that nothing has yet, such as {@code phone/7/IMG_0001.jpg}. */
  String free(int link, String name) {
    for (int number = 1; ; number++) {
      String place = FOLDER + "/" + link + "/" + PhoneNames.numbered(name, number);
      if (!uploads.isTaken(place) && !Files.exists(inbox.resolve(place))) {
        return place;
      }
    }
  }

  /** Moves a file that is on the disk to its place; nothing is done if it is there already. */
  void move(Path part, String place) throws IOException {
    Path target = inbox.resolve(place);
    Path folder = target.getParent();
    if (folder == null || !Files.exists(part)) {
      return;
    }
    Files.createDirectories(folder);
    name(part, target, folder);
    // Each folder may be new, and its own name lies in the one above it.
    Path named = folder;
    while (named != null && named.startsWith(inbox)) {
      Synced.folder(named);
      named = named.getParent();
    }
    Files.deleteIfExists(part);
  }

  /**
   * A hard link never replaces a file; where there are none, a copy beside the place is renamed.
   */
  private static void name(Path part, Path target, Path folder) throws IOException {
    try {
      Files.createLink(target, part);
    } catch (FileAlreadyExistsException there) {
      if (Files.mismatch(target, part) != -1) {
        throw there;
      }
    } catch (UnsupportedOperationException | FileSystemException noLinks) {
      copy(part, target, folder);
    }
  }

  private static void copy(Path part, Path target, Path folder) throws IOException {
    Path beside = folder.resolve("." + part.getFileName());
    Files.copy(part, beside, StandardCopyOption.REPLACE_EXISTING);
    Synced.file(beside);
    if (Files.mismatch(beside, part) != -1 || Files.exists(target)) {
      throw new FileAlreadyExistsException("the place in the inbox was taken meanwhile");
    }
    Files.move(beside, target, StandardCopyOption.ATOMIC_MOVE);
  }
}
