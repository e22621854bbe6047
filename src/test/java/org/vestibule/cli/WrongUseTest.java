package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A command line that can't be followed: code 2, what is wrong and where to read on, no answer. */
class WrongUseTest {

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "fnd 16",
        "--nonsense",
        "find --nonsense 16",
        "find --most many 16",
        "find --tooth",
        "visits",
        "visits remove V1",
        "look",
        "file --by Ada",
        "move --by Ada",
        "reject --by Ada --why so",
        "show",
        "show one two",
        "export",
        "check",
        "verify everything",
        "ingest a b",
        "waiting --sheet",
        "demo --folder"
      })
  void endsWithTwoAndSaysWhereToReadOn(String line) {
    Asked asked =
        Asked.in(folder, Map.of("HOME", "home"), line.isEmpty() ? new String[0] : line.split(" "));
    assertThat(asked.code()).isEqualTo(2);
    assertThat(asked.out()).isEmpty();
    assertThat(asked.err()).startsWith("vestibule: ").contains("--help");
    assertThat(asked.err()).doesNotContain("Exception").doesNotContain("\tat ");
    assertThat(folder.resolve("home")).doesNotExist();
  }

  @Test
  void anUnknownCommandIsAnsweredWithTheNearestOne() {
    assertThat(Asked.in(folder, Map.of(), "igest", "roll").err())
        .isEqualTo(
            """
            vestibule: there is no command "igest"; did you mean ingest?
            For what can be asked here: vestibule --help
            """);
    assertThat(Asked.in(folder, Map.of(), "xyzzy").err())
        .isEqualTo(
            """
            vestibule: there is no command "xyzzy".
            For what can be asked here: vestibule --help
            """);
  }

  @Test
  void anUnknownOptionIsNamed() {
    assertThat(Asked.in(folder, Map.of(), "find", "16", "--toth", "16").err())
        .isEqualTo(
            """
            vestibule: find has no option --toth; did you mean --tooth?
            For what can be asked here: vestibule find --help
            """);
  }

  @Test
  void withoutACommandItSaysThatOneIsMissing() {
    assertThat(Asked.in(folder, Map.of()).err())
        .isEqualTo(
            """
            vestibule: say what is to be done, such as look or demo.
            For what can be asked here: vestibule --help
            """);
  }

  /** The operating system hands over no zero byte, but Windows as many other bad characters. */
  @ParameterizedTest
  @ValueSource(strings = {"look a\0b", "check a\0b", "verify --home a\0b", "demo --folder a\0b"})
  void aNameThatNoFileCanHaveIsAWrongCommandLine(String line) {
    Asked asked = Asked.in(folder, Map.of(), line.split(" "));
    assertThat(asked.code()).isEqualTo(2);
    assertThat(asked.err())
        .isEqualTo(
            "vestibule: a name on the command line can't be the name of a file or folder here."
                + " Check it for strange characters.\n");
  }

  /** A script whose variable is not set must not take the folder it stands in. */
  @ParameterizedTest
  @ValueSource(strings = {"look", "ingest", "check"})
  void anEmptyNameIsNotThisFolder(String command) {
    Asked asked = Asked.in(folder, Map.of("VESTIBULE_BY", "Ada Moss"), command, "");
    assertThat(asked.code()).isEqualTo(2);
    assertThat(asked.err())
        .isEqualTo(
            "vestibule: a name on the command line is empty. Write the name, or leave the option"
                + " out.\n");
  }

  @Test
  void aDayThatIsNoneIsSaidSo() {
    assertThat(
            Asked.in(folder, Map.of(), "cards", "visits", "--day", "12.3.2026", "--out", "c.pdf")
                .err())
        .isEqualTo(
            """
            vestibule: "12.3.2026" is no day; write it as YYYY-MM-DD.
            For what can be asked here: vestibule cards visits --help
            """);
  }
}
