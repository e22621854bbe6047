package org.vestibule.encode;

import java.nio.charset.StandardCharsets;
import java.util.Set;

/** The header of an ICC profile (ICC.1:2022 7.2, from memory): 128 bytes, big endian. */
final class ProfileHeader {

  private static final int HEADER_BYTES = 128;
  private static final Set<String> CLASSES = Set.of("scnr", "mntr", "spac");

  private ProfileHeader() {}

  /** True for an input, display or colour-space profile of the picture's kind of colour. */
  static boolean fits(byte[] profile, boolean colour) {
    if (profile.length < HEADER_BYTES || !signature(profile, 36).equals("acsp")) {
      return false;
    }
    return CLASSES.contains(signature(profile, 12))
        && signature(profile, 16).equals(colour ? "RGB " : "GRAY");
  }

  private static String signature(byte[] profile, int offsetBytes) {
    return new String(profile, offsetBytes, 4, StandardCharsets.US_ASCII);
  }
}
