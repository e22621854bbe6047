package org.vestibule.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.junit.jupiter.api.Test;

/** Keys for single uses, checked against HMAC-SHA-256 (RFC 2104) computed here. */
class DerivedKeysTest {

  private static final byte[] SECRET =
      "a secret of thirty-two bytes ...".getBytes(StandardCharsets.US_ASCII);

  @Test
  void aKeyIsTheHmacOfItsUse() throws Exception {
    Mac mac = Mac.getInstance("HmacSHA256");
    mac.init(new SecretKeySpec(SECRET, "HmacSHA256"));
    byte[] expected =
        mac.doFinal(
            "23:vestibule derived key 17:release8:2026-001".getBytes(StandardCharsets.UTF_8));
    assertThat(new DerivedKeys(SECRET).of("release", "2026-001")).isEqualTo(expected);
  }

  @Test
  void usesAreKeptApart() {
    DerivedKeys keys = new DerivedKeys(SECRET);
    assertThat(keys.of("release", "1")).isNotEqualTo(keys.of("release1"));
    assertThat(keys.of("release", "1")).isNotEqualTo(keys.of("recipient", "1"));
  }
}
