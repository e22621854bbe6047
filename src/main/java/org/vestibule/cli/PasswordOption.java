package org.vestibule.cli;

import java.io.Console;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import picocli.CommandLine.Option;

/** A new password: typed unseen, or the first line of a file; never a word of the command line. */
final class PasswordOption {

  /** NIST SP 800-63B asks for at least 8 of a person (from memory); records ask for more. */
  private static final int SHORTEST = 12;

  private static final int LONGEST = 1000;

  @Option(
      names = "--password-file",
      paramLabel = "FILE",
      description = "A file whose first line is the password. Otherwise it is asked for.")
  private @Nullable String file;

  Outcome<char[]> read(Surroundings surroundings) throws IOException {
    Outcome<char[]> said = file == null ? typed(surroundings) : ofFile(surroundings, file);
    return said.then(
        password ->
            password.length < SHORTEST || password.length > LONGEST
                ? Outcome.refused(
                    "the password has " + password.length + " characters, not 12 to 1000",
                    "several words that don't belong together are long and easy to keep in mind")
                : Outcome.done(password));
  }

  private static Outcome<char[]> ofFile(Surroundings surroundings, String file) throws IOException {
    List<String> lines = Files.readAllLines(surroundings.path(file), StandardCharsets.UTF_8);
    return Outcome.done((lines.isEmpty() ? "" : lines.get(0)).toCharArray());
  }

  @SuppressWarnings("SystemConsoleNull") // Newer runtimes give one without a terminal, too.
  private static Outcome<char[]> typed(Surroundings surroundings) {
    Console terminal = System.console();
    if (terminal == null || !surroundings.console().isInteractive()) {
      return Outcome.refused(
          "nobody sits at a terminal who could type the password",
          "write it into a file that only you can read, and name it with --password-file");
    }
    char[] first = terminal.readPassword("Password: ");
    char[] again = terminal.readPassword("Again: ");
    return first != null && Arrays.equals(first, again)
        ? Outcome.done(first)
        : Outcome.refused("the two passwords differ", "type it twice");
  }
}
