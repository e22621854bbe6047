package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.Practice;
import org.vestibule.flow.TestHome;
import org.vestibule.keys.Passwords;
import org.vestibule.store.ledger.AccountRow;
import org.vestibule.store.ledger.SessionRow;

/** Who may use the pages: let in, listed, given another password, removed. */
class PeopleCommandTest {

  private static final String FIRST = "four calm herons wade";
  private static final String SECOND = "nine dry reeds bend";

  @TempDir private Path folder;
  private TestHome home;
  private String first;
  private String second;

  @BeforeEach
  void layOut() throws IOException {
    home = TestHome.in(folder.resolve("home"));
    first = Files.writeString(folder.resolve("first"), FIRST + "\nnot this\n").toString();
    second = Files.writeString(folder.resolve("second"), SECOND).toString();
  }

  private Asked people(String... words) {
    String[] all = new String[words.length + 1];
    all[0] = "people";
    System.arraycopy(words, 0, all, 1, words.length);
    return Asked.by("Ada Example", home, all);
  }

  private AccountRow account(String name) throws IOException {
    try (Practice practice = TestHome.openAt(home.folder())) {
      return practice.store().ledger().accounts().find(name).orElseThrow();
    }
  }

  private static void refused(Asked asked, int code, String words) {
    assertThat(asked.code()).as(asked.err()).isEqualTo(code);
    assertThat(asked.err()).isEqualTo(words);
    assertThat(asked.out()).isEmpty();
  }

  @Test
  void somebodyIsLetInListedGivenAnotherPasswordAndRemoved() throws IOException {
    Asked added = people("add", " Chair 1 ", "--role", "Staff", "--password-file", first);
    assertThat(added.err()).isEmpty();
    assertThat(added.out()).isEqualTo("Chair 1 may sign in now, as staff.\n");
    assertThat(Passwords.matches(FIRST.toCharArray(), account("Chair 1").password())).isTrue();
    Asked list = Asked.of(home, "people", "list");
    assertThat(list.out()).contains("Chair 1", "staff", "Ada Example", "2026-03-14");
    assertThat(list.out()).doesNotContain("argon2", FIRST);
    sit("Chair 1");
    Asked changed = people("password", "Chair 1", "--password-file", second);
    assertThat(changed.out()).isEqualTo("Chair 1 has another password and signs in again.\n");
    assertThat(Passwords.matches(SECOND.toCharArray(), account("Chair 1").password())).isTrue();
    assertThat(Passwords.matches(FIRST.toCharArray(), account("Chair 1").password())).isFalse();
    assertThat(sits()).isFalse();
    sit("Chair 1");
    Asked removed = people("remove", "Chair 1");
    assertThat(removed.out()).isEqualTo("Chair 1 may sign in no longer.\n");
    assertThat(sits()).isFalse();
    Asked empty = Asked.of(home, "people", "list");
    assertThat(empty.out()).isEqualTo("Nobody has a name and a password yet.\n");
  }

  private void sit(String name) throws IOException {
    try (Practice practice = TestHome.openAt(home.folder())) {
      practice
          .store()
          .ledger()
          .sessions()
          .begin(
              new SessionRow(
                  "mark",
                  name,
                  "staff",
                  "",
                  "",
                  TestHome.CLOCK.instant(),
                  TestHome.CLOCK.instant(),
                  TestHome.CLOCK.instant().plusSeconds(3600)));
    }
  }

  private boolean sits() throws IOException {
    try (Practice practice = TestHome.openAt(home.folder())) {
      return practice.store().ledger().sessions().find("mark").isPresent();
    }
  }

  @Test
  void whatCannotBeIsRefusedInWordsAndChangesNothing() throws IOException {
    assertThat(people("add", "desk", "--role", "reader", "--password-file", first).code()).isZero();
    String before = account("desk").password();
    refused(
        people("add", "desk", "--role", "staff", "--password-file", second),
        3,
        """
        vestibule: the name "desk" is taken.
          What to do: choose another, or use "people password" for a new password.
        """);
    refused(
        people("add", "x", "--role", "phone", "--password-file", first),
        2,
        "vestibule: --role must be reader, staff or administrator but was phone.\n");
    refused(
        people("add", "x".repeat(81), "--role", "staff", "--password-file", first),
        2,
        "vestibule: a name of 1 to 80 characters is needed.\n");
    String unknown =
        """
        vestibule: nobody is called "gate" here.
          What to do: "people list" names everybody.
        """;
    refused(people("password", "gate", "--password-file", first), 3, unknown);
    refused(people("remove", "gate"), 3, unknown);
    String brief = Files.writeString(folder.resolve("brief"), "elevenchars\n").toString();
    refused(
        people("password", "desk", "--password-file", brief),
        3,
        """
        vestibule: the password has 11 characters, not 12 to 1000.
          What to do: several words that don't belong together are long and easy to keep in mind.
        """);
    refused(
        people("password", "desk"),
        3,
        """
        vestibule: nobody sits at a terminal who could type the password.
          What to do: write it into a file that only you can read, and name it with --password-file.
        """);
    Asked missing = people("password", "desk", "--password-file", "nowhere");
    assertThat(missing.code()).isNotZero();
    assertThat(missing.err()).contains("nowhere").doesNotContain("Exception", folder.toString());
    assertThat(account("desk").password()).isEqualTo(before);
    try (Practice practice = TestHome.openAt(home.folder())) {
      assertThat(practice.store().ledger().accounts().all())
          .extracting(AccountRow::name)
          .isEqualTo(List.of("desk"));
    }
  }
}
