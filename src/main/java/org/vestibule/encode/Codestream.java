package org.vestibule.encode;

import java.util.Arrays;

/** The JPEG inside an object's single fragment. */
public final class Codestream {

  private Codestream() {}

  /** The fragment without the one NUL that makes its length even (PS3.5 A.4). */
  public static byte[] withoutPadding(byte[] fragment) {
    int length = fragment.length;
    boolean padded =
        length > 3
            && fragment[length - 1] == 0
            && fragment[length - 2] == (byte) 0xD9
            && fragment[length - 3] == (byte) 0xFF;
    return Arrays.copyOf(fragment, padded ? length - 1 : length);
  }
}
