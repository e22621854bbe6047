package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every command says what it does, on the output and without touching anything. */
class HelpTest {

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "look ",
        "demo ",
        "ingest ",
        "nightly ",
        "waiting ",
        "file ",
        "move ",
        "reject ",
        "grey-card ",
        "visits ",
        "visits add ",
        "visits confirm ",
        "visits fetch ",
        "visits list ",
        "cards ",
        "cards visits ",
        "cards views ",
        "find ",
        "show ",
        "export ",
        "serve ",
        "people ",
        "people add ",
        "people list ",
        "people password ",
        "people remove ",
        "forward ",
        "forward list ",
        "forward again ",
        "forward by-hand ",
        "release ",
        "release look ",
        "release make ",
        "release list ",
        "release show ",
        "release withdraw ",
        "share ",
        "share make ",
        "share list ",
        "share end ",
        "consent ",
        "consent add ",
        "consent import ",
        "consent list ",
        "consent withdraw ",
        "check ",
        "verify ",
        "reindex ",
        "backup ",
        "restore ",
        "repair "
      })
  void helpGoesToTheOutputAndEndsWithZero(String command) throws IOException {
    Asked asked = Asked.in(folder, Map.of("HOME", "home"), (command + "--help").split(" "));
    assertThat(asked.code()).isZero();
    assertThat(asked.err()).isEmpty();
    assertThat(asked.out()).startsWith("Usage: vestibule " + command.strip());
    assertThat(asked.out().lines().filter(line -> line.endsWith("@"))).isEmpty();
    try (var inside = Files.list(folder)) {
      assertThat(inside).isEmpty();
    }
  }

  /** Whatever the root's help lists is tested above; a new command must be added there. */
  @Test
  void theRootListsTheseCommands() {
    Asked asked = Asked.in(folder, Map.of(), "--help");
    String commands = asked.out().substring(asked.out().indexOf("Commands:"));
    var names = new TreeSet<String>();
    Pattern.compile("(?m)^  ([a-z]+) ")
        .matcher(commands)
        .results()
        .forEach(m -> names.add(m.group(1)));
    assertThat(names)
        .containsExactly(
            "backup", "cards", "check", "consent", "demo", "export", "file", "find", "forward",
            "ingest", "look", "move", "nightly", "people", "reindex", "reject", "release", "repair",
            "restore", "serve", "share", "show", "verify", "visits", "waiting");
  }

  @Test
  void theVersionIsSaid() {
    assertThat(Asked.in(folder, Map.of(), "--version").out()).startsWith("vestibule 0.");
  }

  /** The codes in the administrator's table are those of the program. */
  @Test
  void everyExitCodeIsDocumented() throws IOException {
    String operations = Files.readString(Path.of("docs", "operations.md"));
    for (ExitCode code : ExitCode.values()) {
      assertThat(operations).contains("\n| " + code.number() + " | ");
    }
  }
}
