package org.vestibule.release;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.junit.jupiter.api.Test;

/** Pseudonyms, checked against HMAC-SHA-256 (RFC 2104) computed here. */
class PseudonymsTest {

  private static final byte[] KEY = new byte[32];
  private static final byte[] OTHER = {
    1, 2, 3, 4, 5, 6, 7, 8, 9, 1, 2, 3, 4, 5, 6, 7, 8, 9, 1, 2, 3, 4, 5, 6, 7, 8, 9, 1, 2, 3, 4, 5
  };

  @Test
  void aPatientHasOnePseudonymUnderOneKeyAndAnotherUnderAnother() {
    Pseudonyms set = new Pseudonyms(KEY);
    assertThat(set.patient("WEIR", "P1"))
        .isEqualTo(new Pseudonyms(KEY).patient("WEIR", "P1"))
        .matches("R-[0-9A-HJKMNP-TV-Z]{12}")
        .isNotEqualTo(set.patient("WEIR", "P2"))
        .isNotEqualTo(set.patient("MILL", "P1"))
        .isNotEqualTo(new Pseudonyms(OTHER).patient("WEIR", "P1"));
  }

  @Test
  void thePseudonymIsTheHmacsBits() throws Exception {
    Mac mac = Mac.getInstance("HmacSHA256");
    mac.init(new SecretKeySpec(OTHER, "HmacSHA256"));
    byte[] out = mac.doFinal("7:patient4:WEIR2:P1".getBytes(StandardCharsets.UTF_8));
    long bits = ByteBuffer.wrap(Arrays.copyOf(out, 8)).getLong();
    StringBuilder expected = new StringBuilder("R-");
    for (int i = 0; i < 12; i++) {
      expected.append("0123456789ABCDEFGHJKMNPQRSTVWXYZ".charAt((int) (bits >>> (5 * i)) & 31));
    }
    assertThat(new Pseudonyms(OTHER).patient("WEIR", "P1")).isEqualTo(expected.toString());
  }

  @Test
  void partsAreKeptApart() {
    Pseudonyms set = new Pseudonyms(KEY);
    assertThat(set.patient("A", "BC")).isNotEqualTo(set.patient("AB", "C"));
  }

  @Test
  void daysAreMovedBackByUpToFiveYears() {
    Set<Long> shifts = new HashSet<>();
    for (int i = 0; i < 2000; i++) {
      long days = new Pseudonyms(KEY).shiftDays("", "P" + i);
      assertThat(days).isBetween(-1826L, -1L);
      shifts.add(days);
    }
    assertThat(shifts).hasSizeGreaterThan(1000);
  }

  /** PS3.5 B.2 and 9.1: 2.25, digits, at most 64 characters. */
  @Test
  void uidsFitTogetherWithinASet() {
    Pseudonyms set = new Pseudonyms(KEY);
    String copy = set.uids().substitute("2.25.1");
    assertThat(copy)
        .matches("2\\.25\\.[1-9][0-9]{1,38}")
        .isEqualTo(set.uids().substitute("2.25.1"));
    assertThat(copy).isNotEqualTo(new Pseudonyms(OTHER).uids().substitute("2.25.1"));
  }
}
