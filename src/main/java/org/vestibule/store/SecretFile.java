package org.vestibule.store;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.HexFormat;
import org.vestibule.base.Outcome;
import org.vestibule.base.Uids;
import org.vestibule.store.ledger.SecretMark;

/** Copies of the practice's secret, for whoever keeps one apart and brings it back. */
public final class SecretFile {

  public static final String NAME = "practice.secret";

  private SecretFile() {}

  /** What stands for the secret in this file, as a ledger and a backup know it. */
  public static Outcome<String> mark(Path file) throws IOException {
    if (!Files.isRegularFile(file)) {
      return Outcome.refused(
          "there is no secret file " + file.getFileName() + " there",
          "name the copy of " + NAME + " that was kept apart from the backup");
    }
    String text = Files.readString(file, StandardCharsets.ISO_8859_1).trim();
    return text.matches("[0-9a-f]{64}")
        ? Outcome.done(SecretMark.of(new Uids(HexFormat.of().parseHex(text))))
        : Outcome.refused(
            "the file " + file.getFileName() + " does not hold a practice's secret",
            "name the copy of " + NAME + " that was kept apart from the backup");
  }

  /**
   * Copies the secret so that its owner alone can read the copy.
   *
   * @return false if the same secret lay there already
   */
  public static Outcome<Boolean> copy(Path from, Path to) throws IOException {
    byte[] secret = Files.readAllBytes(from);
    if (Files.exists(to)) {
      return Arrays.equals(Files.readAllBytes(to), secret)
          ? Outcome.done(false)
          : Outcome.refused(
              "another secret lies there already (" + to.getFileName() + ")",
              "it is left as it is; name another folder for this practice's secret");
    }
    Path folder = to.toAbsolutePath().getParent();
    if (folder != null) {
      OwnerOnly.createFolder(folder);
    }
    boolean whole = false;
    try {
      OwnerOnly.createFile(to);
      Files.write(to, secret, StandardOpenOption.WRITE, StandardOpenOption.SYNC);
      whole = !OwnerOnly.isOpenToOthers(to);
    } finally {
      if (!whole) {
        Files.deleteIfExists(to);
      }
    }
    return whole
        ? Outcome.done(true)
        : Outcome.refused(
            "the secret can't be kept for its owner alone in that folder, so it was not written"
                + " there",
            "name a folder on a disk that knows owners, such as an encrypted one; many memory"
                + " sticks are formatted without");
  }
}
