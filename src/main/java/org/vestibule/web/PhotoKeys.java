package org.vestibule.web;

import java.nio.ByteBuffer;
import java.security.GeneralSecurityException;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import javax.crypto.Cipher;
import javax.crypto.spec.SecretKeySpec;
import org.vestibule.base.ContentHash;
import org.vestibule.flow.Practice;

/**
 * What photographs are called in addresses: 22 characters that say nothing to anybody outside and
 * can't be guessed. The first 16 bytes of the content hash are one block, enciphered with a key
 * made from the practice's secret (AES, FIPS 197); a block that nobody was given names a photograph
 * by chance once in 2^128 divided by the number of photographs.
 */
final class PhotoKeys {

  private static final int BLOCK = 16;

  private final Practice practice;
  private final SecretKeySpec key;

  PhotoKeys(Practice practice) {
    this.practice = practice;
    this.key =
        new SecretKeySpec(
            Arrays.copyOf(practice.store().keyFor("web", "photographs in addresses"), BLOCK),
            "AES");
  }

  /** The key of a photograph. */
  String of(ContentHash hash) {
    byte[] first = Arrays.copyOf(HexFormat.of().parseHex(hash.hex()), BLOCK);
    return Base64.getUrlEncoder()
        .withoutPadding()
        .encodeToString(block(Cipher.ENCRYPT_MODE, first));
  }

  /** The photograph with this key; empty if there is none. */
  Optional<ContentHash> find(String text) {
    byte[] block;
    try {
      block = Base64.getUrlDecoder().decode(text);
    } catch (IllegalArgumentException notBase64) {
      return Optional.empty();
    }
    if (block.length != BLOCK) {
      return Optional.empty();
    }
    String prefix = HexFormat.of().formatHex(block(Cipher.DECRYPT_MODE, block));
    List<ContentHash> found = practice.store().ledger().photos().startingWith(prefix);
    return found.size() == 1 && of(found.get(0)).equals(text)
        ? Optional.of(found.get(0))
        : Optional.empty();
  }

  private byte[] block(int mode, byte[] block) {
    try {
      // One block of hash bytes each: no two are alike, so nothing shows through.
      Cipher cipher = Cipher.getInstance("AES/ECB/NoPadding");
      cipher.init(mode, key);
      return ByteBuffer.wrap(cipher.doFinal(block)).array();
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("this Java runtime lacks AES", e);
    }
  }
}
