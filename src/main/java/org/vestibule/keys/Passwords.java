package org.vestibule.keys;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.Base64;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bouncycastle.crypto.generators.Argon2BytesGenerator;
import org.bouncycastle.crypto.params.Argon2Parameters;

/**
 * Hashes of passwords by Argon2id (RFC 9106): 19 MiB, two passes, one lane, as OWASP's Password
 * Storage Cheat Sheet names them (from memory). Written as {@code
 * $argon2id$v=19$m=19456,t=2,p=1$salt$hash}, so that a later hash may be made otherwise.
 */
public final class Passwords {

  private static final int MEMORY_KIB = 19_456;
  private static final int PASSES = 2;
  private static final int LANES = 1;
  private static final int SALT_BYTES = 16;
  private static final int HASH_BYTES = 32;
  private static final int MOST_MEMORY_KIB = 1 << 18;
  private static final int MOST_PASSES = 16;

  private static final Pattern WRITTEN =
      Pattern.compile(
          "\\$argon2id\\$v=19\\$m=(\\d{1,7}),t=(\\d{1,3}),p=(\\d{1,2})"
              + "\\$([A-Za-z0-9+/]{11,64})\\$([A-Za-z0-9+/]{22,128})");

  private Passwords() {}

  /** A new hash with a salt of its own. */
  public static String hash(char[] password) {
    byte[] salt = new byte[SALT_BYTES];
    new SecureRandom().nextBytes(salt);
    byte[] hash = argon2id(password, salt, MEMORY_KIB, PASSES, LANES, HASH_BYTES);
    Base64.Encoder base64 = Base64.getEncoder().withoutPadding();
    return "$argon2id$v=19$m="
        + MEMORY_KIB
        + ",t="
        + PASSES
        + ",p="
        + LANES
        + "$"
        + base64.encodeToString(salt)
        + "$"
        + base64.encodeToString(hash);
  }

  /** True if the hash was made of this password; false too for what is no hash of ours. */
  public static boolean matches(char[] password, String written) {
    Matcher matcher = WRITTEN.matcher(written);
    if (!matcher.matches()) {
      return false;
    }
    int memoryKib = Integer.parseInt(matcher.group(1));
    int passes = Integer.parseInt(matcher.group(2));
    int lanes = Integer.parseInt(matcher.group(3));
    if (memoryKib > MOST_MEMORY_KIB || memoryKib < 8 * lanes || passes > MOST_PASSES) {
      return false;
    }
    byte[] salt = Base64.getDecoder().decode(matcher.group(4));
    byte[] hash = Base64.getDecoder().decode(matcher.group(5));
    return MessageDigest.isEqual(
        hash, argon2id(password, salt, memoryKib, passes, lanes, hash.length));
  }

  private static byte[] argon2id(
      char[] password, byte[] salt, int memoryKib, int passes, int lanes, int length) {
    Argon2BytesGenerator generator = new Argon2BytesGenerator();
    generator.init(
        new Argon2Parameters.Builder(Argon2Parameters.ARGON2_id)
            .withVersion(Argon2Parameters.ARGON2_VERSION_13)
            .withMemoryAsKB(memoryKib)
            .withIterations(passes)
            .withParallelism(lanes)
            .withSalt(salt)
            .build());
    byte[] hash = new byte[length];
    byte[] bytes = String.valueOf(password).getBytes(StandardCharsets.UTF_8);
    generator.generateBytes(bytes, hash);
    Arrays.fill(bytes, (byte) 0);
    return hash;
  }
}
