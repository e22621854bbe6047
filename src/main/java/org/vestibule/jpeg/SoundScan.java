package org.vestibule.jpeg;

import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;

/**
 * Says whether every code of a picture can be read, without keeping what they mean. An instance
 * says so of one file's bytes, and that its coded data can stay as it is in a baseline picture:
 * whoever hands it on hands it on with the same bytes.
 */
public final class SoundScan {

  private final int length;
  private final JpegStructure structure;

  /** Says so of bytes of this length, which are built so. */
  SoundScan(int length, JpegStructure structure) {
    this.length = length;
    this.structure = structure;
  }

  /** How the file is built. */
  public JpegStructure structure() {
    return structure;
  }

  /** False if these can't be the bytes that were read. */
  public boolean maySpeakOf(byte[] bytes) {
    return bytes.length == length;
  }

  /** The structure of a file whose first picture is whole and sound; any other is refused. */
  public static Outcome<JpegStructure> check(byte[] bytes) {
    try {
      JpegStructure structure = PictureDecoder.structure(bytes);
      if (checked(bytes, structure) != null) {
        return Outcome.done(structure);
      }
      return Outcome.done(Decoding.use(bytes, false, picture -> picture.structure));
    } catch (JpegFault fault) {
      return fault.refusal();
    }
  }

  /**
   * What is known of a sequential picture whose scans are sound and tidy, without its tokens; null
   * for any other.
   */
  static @Nullable TokenPicture checked(byte[] bytes, JpegStructure structure) {
    if (structure.progressive()) {
      return null;
    }
    try {
      return MemoryBudget.shared()
          .within(
              MemoryNeed.checking(structure.frame()), () -> TokenDecoder.check(bytes, structure));
    } catch (JpegFault fault) {
      // What is odd or damaged is read again the plain way, which finds the words for it.
      return null;
    }
  }
}
