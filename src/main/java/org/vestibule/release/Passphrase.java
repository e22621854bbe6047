package org.vestibule.release;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.vestibule.base.Outcome;

/** What opens encrypted copies. It comes from a file and is written nowhere. */
public final class Passphrase {

  /**
   * The method makes its key with 1000 rounds of PBKDF2 (WinZip AE, from memory), which is little:
   * the length has to make up for it.
   */
  private static final int FEWEST_CHARACTERS = 16;

  private static final long MOST_BYTES = 1024;

  private final String words;

  private Passphrase(String words) {
    this.words = words;
  }

  /** The one line of a file. */
  public static Outcome<Passphrase> read(Path file) throws IOException {
    if (!Files.isRegularFile(file)) {
      return Outcome.refused(
          "there is no file " + file.getFileName() + " with a passphrase",
          "write the passphrase into a file that only you can read, and name it");
    }
    if (Files.size(file) > MOST_BYTES) {
      return Outcome.refused(
          file.getFileName() + " is too long for a passphrase", "check that it is the right file");
    }
    // One character for each byte, so that nothing unreadable can stop the reading.
    String text = Files.readString(file, StandardCharsets.ISO_8859_1);
    String words = text.endsWith("\n") ? text.substring(0, text.length() - 1) : text;
    return of(words.endsWith("\r") ? words.substring(0, words.length() - 1) : words);
  }

  private static Outcome<Passphrase> of(String words) {
    if (!words.chars().allMatch(c -> c >= ' ' && c <= '~')) {
      return Outcome.refused(
          "the passphrase is not one line of plain letters, digits and signs",
          "use a to z, A to Z, 0 to 9, spaces and the signs between them: programs disagree about"
              + " others");
    }
    if (words.length() < FEWEST_CHARACTERS || !words.equals(words.strip())) {
      return Outcome.refused(
          "the passphrase has fewer than "
              + FEWEST_CHARACTERS
              + " characters, or a space at an end",
          "take four or five words that nobody would guess");
    }
    return Outcome.done(new Passphrase(words));
  }

  char[] characters() {
    return words.toCharArray();
  }

  /** Never the words. */
  @Override
  public String toString() {
    return "a passphrase";
  }
}
