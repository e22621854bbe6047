package org.vestibule.base;

import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.security.InvalidKeyException;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * UIDs of the form 2.25.&lt;UUID as a decimal number&gt; (PS3.5 B.2), the UUID being version 8 (RFC
 * 9562 5.8) over HMAC-SHA-256 of the identity's parts under the practice's secret: the same parts
 * give the same UID on any day and any machine that holds the secret.
 */
public final class Uids {

  private static final String ALGORITHM = "HmacSHA256";
  private static final int UUID_BYTES = 16;

  private final SecretKeySpec key;

  /**
   * @param secret at least 32 bytes
   */
  public Uids(byte[] secret) {
    if (secret.length < 32) {
      throw new IllegalArgumentException(
          "the practice secret has at least 32 bytes but this has " + secret.length);
    }
    this.key = new SecretKeySpec(secret, ALGORITHM);
  }

  /**
   * The UID of the identity made of these parts; each part is length-prefixed, so that no two
   * different lists give the same bytes.
   */
  public String of(String... parts) {
    Mac mac = mac();
    for (String part : parts) {
      byte[] bytes = part.getBytes(StandardCharsets.UTF_8);
      mac.update((bytes.length + ":").getBytes(StandardCharsets.US_ASCII));
      mac.update(bytes);
    }
    byte[] uuid = Arrays.copyOf(mac.doFinal(), UUID_BYTES);
    uuid[6] = (byte) ((uuid[6] & 0x0F) | 0x80);
    uuid[8] = (byte) ((uuid[8] & 0x3F) | 0x80);
    return "2.25." + new BigInteger(1, uuid);
  }

  private Mac mac() {
    try {
      Mac mac = Mac.getInstance(ALGORITHM);
      mac.init(key);
      return mac;
    } catch (NoSuchAlgorithmException | InvalidKeyException e) {
      throw new IllegalStateException("this Java runtime lacks " + ALGORITHM, e);
    }
  }
}
