package org.vestibule.release;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.InvalidKeyException;
import java.security.NoSuchAlgorithmException;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.vestibule.base.Uids;
import org.vestibule.deid.UidMap;

/**
 * What stands for a patient, a UID and a day in one set of copies: HMAC-SHA-256 (RFC 2104) under
 * the set's key, which stays in the practice. Without the key nothing leads back; with it the same
 * patient has the same pseudonym, UIDs fit together, and days keep their distances.
 */
public final class Pseudonyms {

  private static final String ALGORITHM = "HmacSHA256";

  /** Digits and letters that nobody takes for each other: no I, L, O and U. */
  private static final String LETTERS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

  private static final int LENGTH = 12;
  private static final int BITS_PER_LETTER = 5;

  /** Five years: a shift tells nothing about the year either. */
  private static final int MOST_DAYS = 1826;

  private final SecretKeySpec key;
  private final Uids uids;

  /**
   * @param key 32 bytes that never leave the practice
   */
  public Pseudonyms(byte[] key) {
    this.key = new SecretKeySpec(key, ALGORITHM);
    this.uids = new Uids(hmac("uids"));
  }

  /** The patient's pseudonym, such as {@code R-7Q2M0ABCDEFG}. */
  public String patient(String issuer, String id) {
    long bits = ByteBuffer.wrap(hmac("patient", issuer, id)).getLong();
    StringBuilder name = new StringBuilder("R-");
    for (int i = 0; i < LENGTH; i++) {
      name.append(LETTERS.charAt((int) (bits >>> (i * BITS_PER_LETTER)) & 31));
    }
    return name.toString();
  }

  /** The days by which this patient's dates are moved back, as a negative number. */
  public long shiftDays(String issuer, String id) {
    long bits = ByteBuffer.wrap(hmac("days", issuer, id)).getLong();
    return -1L - Math.floorMod(bits, MOST_DAYS);
  }

  /** The substitutes of UIDs, of the form 2.25 (PS3.5 B.2). */
  public UidMap uids() {
    return uid -> uids.of("release", uid);
  }

  private byte[] hmac(String... parts) {
    try {
      Mac mac = Mac.getInstance(ALGORITHM);
      mac.init(key);
      for (String part : parts) {
        byte[] bytes = part.getBytes(StandardCharsets.UTF_8);
        mac.update((bytes.length + ":").getBytes(StandardCharsets.US_ASCII));
        mac.update(bytes);
      }
      return mac.doFinal();
    } catch (NoSuchAlgorithmException | InvalidKeyException e) {
      throw new IllegalStateException("this Java runtime lacks " + ALGORITHM, e);
    }
  }
}
