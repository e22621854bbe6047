package org.vestibule.jpeg;

import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;

/** Says whether every code of a picture can be read, without keeping what they mean. */
public final class SoundScan {

  private SoundScan() {}

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
