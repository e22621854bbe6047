package org.vestibule.web;

import java.nio.charset.StandardCharsets;
import java.security.InvalidKeyException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.vestibule.base.ContentHash;

/** Secrets that browsers hold: 256 random bits as 43 characters of base64url. */
final class Secrets {

  private static final int BYTES = 32;
  private static final int CHARACTERS = 43;

  private final SecureRandom random;

  Secrets(SecureRandom random) {
    this.random = random;
  }

  String next() {
    byte[] bytes = new byte[BYTES];
    random.nextBytes(bytes);
    return text(bytes);
  }

  /** True if it has a secret's form. */
  static boolean isOne(String text) {
    return text.length() == CHARACTERS && text.matches("[A-Za-z0-9_-]+");
  }

  /** What may be kept of a secret: nobody gets back from it. */
  static String mark(String secret) {
    return ContentHash.of(secret.getBytes(StandardCharsets.US_ASCII)).hex();
  }

  /** What a page of ours may show of a secret, so that its forms can prove where they come from. */
  static String csrf(String secret) {
    try {
      Mac mac = Mac.getInstance("HmacSHA256");
      mac.init(new SecretKeySpec(secret.getBytes(StandardCharsets.US_ASCII), "HmacSHA256"));
      return text(mac.doFinal("vestibule form 1".getBytes(StandardCharsets.US_ASCII)));
    } catch (NoSuchAlgorithmException | InvalidKeyException e) {
      throw new IllegalStateException("this Java runtime lacks HmacSHA256", e);
    }
  }

  /** Compares without telling by its time how much fits. */
  static boolean same(String one, String other) {
    return MessageDigest.isEqual(
        one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
  }

  private static String text(byte[] bytes) {
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }
}
