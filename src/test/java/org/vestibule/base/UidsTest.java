package org.vestibule.base;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigInteger;
import org.junit.jupiter.api.Test;

class UidsTest {

  private static final byte[] SECRET = new byte[32];

  static {
    for (int i = 0; i < SECRET.length; i++) {
      SECRET[i] = (byte) i;
    }
  }

  /** Expected value computed with Python's hmac, hashlib and uuid modules. */
  @Test
  void agreesWithAnotherImplementation() {
    assertThat(new Uids(SECRET).of("abc", "Zähne", ""))
        .isEqualTo("2.25.195153099565825456161247701134154806219");
  }

  /** PS3.5 9.1 and B.2: at most 64 characters, no leading zero; RFC 9562 4: version and variant. */
  @Test
  void isAVersionEightUuidUnderTheRootForUuids() {
    Uids uids = new Uids(SECRET);
    for (int i = 0; i < 1_000; i++) {
      String uid = uids.of("photo", Integer.toString(i));
      assertThat(uid).matches("2\\.25\\.[1-9][0-9]{0,38}");
      BigInteger uuid = new BigInteger(uid.substring(5));
      assertThat(uuid.shiftRight(76).intValue() & 0xF).isEqualTo(8);
      assertThat(uuid.shiftRight(62).intValue() & 0x3).isEqualTo(2);
    }
  }

  @Test
  void tellsListsApartWhosePartsRunTogether() {
    Uids uids = new Uids(SECRET);
    assertThat(uids.of("ab", "c")).isNotEqualTo(uids.of("a", "bc"));
    assertThat(uids.of("1:a", "")).isNotEqualTo(uids.of("", "1:a"));
  }

  @Test
  void dependsOnThePracticeSecret() {
    assertThat(new Uids(new byte[32]).of("a")).isNotEqualTo(new Uids(SECRET).of("a"));
  }

  @Test
  void refusesAShortSecret() {
    assertThatThrownBy(() -> new Uids(new byte[8]))
        .hasMessage("the practice secret has at least 32 bytes but this has 8");
  }
}
