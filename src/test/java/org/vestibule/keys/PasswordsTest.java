package org.vestibule.keys;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Hashes of passwords against those of the reference implementation. */
class PasswordsTest {

  /**
   * From the reference implementation's own tests (phc-winner-argon2, test.c, Argon2id version
   * 0x13; from memory, and a wrong digit would fail).
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "$argon2id$v=19$m=65536,t=2,p=1$c29tZXNhbHQ$CTFhFdXPJO1aFaMaO6Mm5c8y7cJHAph8ArZWb2GRPPc",
        "$argon2id$v=19$m=256,t=2,p=1$c29tZXNhbHQ$nf65EOgLrQMR/uIPnA4rEsF5h7TKyQwu9U1bMCHGi/4",
        "$argon2id$v=19$m=256,t=2,p=2$c29tZXNhbHQ$bQk8UB/VmZZF4Oo79iDXuL5/0ttZwg2f/5U52iv1cDc"
      })
  void theReferenceImplementationsHashesFit(String written) {
    assertThat(Passwords.matches("password".toCharArray(), written)).isTrue();
    assertThat(Passwords.matches("Password".toCharArray(), written)).isFalse();
  }

  @Test
  void aHashOfOursFitsItsPasswordAloneAndHasItsOwnSalt() {
    String hash = Passwords.hash("herons wade".toCharArray());
    assertThat(hash).startsWith("$argon2id$v=19$m=19456,t=2,p=1$");
    assertThat(Passwords.matches("herons wade".toCharArray(), hash)).isTrue();
    assertThat(Passwords.matches("herons wad".toCharArray(), hash)).isFalse();
    assertThat(Passwords.hash("herons wade".toCharArray())).isNotEqualTo(hash);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "herons wade",
        "$argon2i$v=19$m=256,t=2,p=1$c29tZXNhbHQ$nf65EOgLrQMR/uIPnA4rEsF5h7TKyQwu9U1bMCHGi/4",
        "$argon2id$v=19$m=9999999,t=2,p=1$c29tZXNhbHQ$nf65EOgLrQMR/uIPnA4rEsF5h7TKyQwu9U1bMCHGi/4",
        "$argon2id$v=19$m=256,t=999,p=1$c29tZXNhbHQ$nf65EOgLrQMR/uIPnA4rEsF5h7TKyQwu9U1bMCHGi/4"
      })
  void whatIsNoHashOrWouldTakeTooMuchFitsNothing(String written) {
    assertThat(Passwords.matches("herons wade".toCharArray(), written)).isFalse();
  }
}
