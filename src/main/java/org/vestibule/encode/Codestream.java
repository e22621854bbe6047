package org.vestibule.encode;

import java.util.Arrays;
import java.util.List;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/** The JPEG inside an object's single fragment. */
public final class Codestream {

  private Codestream() {}

  /** The JPEG of an object; refused if the object does not hold one picture in one fragment. */
  public static Outcome<byte[]> of(DataSet object) {
    List<byte[]> fragments = object.fragments(Tags.PixelData);
    return fragments.size() == 1
        ? Outcome.done(unpadded(fragments.get(0)))
        : Outcome.refused("the object holds no single picture", "run verify: it may be damaged");
  }

  /** The fragment without the one NUL that makes its length even (PS3.5 A.4). */
  public static byte[] withoutPadding(byte[] fragment) {
    byte[] unpadded = unpadded(fragment);
    return unpadded == fragment ? fragment.clone() : unpadded;
  }

  /** The same; the fragment itself if it isn't padded. */
  private static byte[] unpadded(byte[] fragment) {
    int length = fragment.length;
    boolean padded =
        length > 3
            && fragment[length - 1] == 0
            && fragment[length - 2] == (byte) 0xD9
            && fragment[length - 3] == (byte) 0xFF;
    return padded ? Arrays.copyOf(fragment, length - 1) : fragment;
  }
}
