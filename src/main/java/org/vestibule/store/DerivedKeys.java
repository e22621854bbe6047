package org.vestibule.store;

import java.nio.charset.StandardCharsets;
import java.security.InvalidKeyException;
import java.security.NoSuchAlgorithmException;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** Keys for single uses: HMAC-SHA-256 (RFC 2104) of the use's name under the practice's secret. */
final class DerivedKeys {

  private static final String ALGORITHM = "HmacSHA256";

  /** No UID's first part reads so: a key is never another form of a UID. */
  private static final String DOMAIN = "vestibule derived key 1";

  private final SecretKeySpec secret;

  DerivedKeys(byte[] secret) {
    this.secret = new SecretKeySpec(secret, ALGORITHM);
  }

  byte[] of(String... use) {
    try {
      Mac mac = Mac.getInstance(ALGORITHM);
      mac.init(secret);
      part(mac, DOMAIN);
      for (String part : use) {
        part(mac, part);
      }
      return mac.doFinal();
    } catch (NoSuchAlgorithmException | InvalidKeyException e) {
      throw new IllegalStateException("this Java runtime lacks " + ALGORITHM, e);
    }
  }

  /** Length first, so that no two lists of parts give the same bytes. */
  private static void part(Mac mac, String part) {
    byte[] bytes = part.getBytes(StandardCharsets.UTF_8);
    mac.update((bytes.length + ":").getBytes(StandardCharsets.US_ASCII));
    mac.update(bytes);
  }
}
