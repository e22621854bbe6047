package org.vestibule.assign;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.FileNames;

/**
 * A phone or camera, as far as a roll can tell: the folder its photographs arrive in, its maker and
 * its model. The lenses of one phone are one device. Two phones of one model that share a folder
 * look like one; the order of their file numbers gives them away.
 *
 * @param folder below the inbox, with a slash at its end; empty at the top
 * @param make in lower case; empty if not stated
 * @param model in lower case; empty if not stated
 */
public record Device(String folder, String make, String model) {

  /** The device of a photograph. */
  public static Device of(String name, CaptureFacts facts) {
    return new Device(
        FileNames.key(FileNames.folder(name)), plain(facts.make()), plain(facts.model()));
  }

  private static String plain(@Nullable String text) {
    return text == null ? "" : text.strip().toLowerCase(Locale.ROOT);
  }

  /** True if the files say which camera took them. */
  boolean isKnown() {
    return !model.isEmpty();
  }

  /**
   * True if a setting for this folder and model speaks of the device.
   *
   * @param ofFolder with or without a slash at its end; empty for any
   * @param ofModel as the camera writes it; empty for any
   */
  boolean isMeant(String ofFolder, String ofModel) {
    String asked = FileNames.key(ofFolder.strip().replaceFirst("/+$", ""));
    return (asked.isEmpty() || folder.equals(asked + "/"))
        && (ofModel.isBlank() || model.equals(plain(ofModel)));
  }

  /** For people; a folder may be named after a patient, so it is not said. */
  String words() {
    return isKnown() ? "a " + model.toUpperCase(Locale.ROOT) : "a phone that doesn't name itself";
  }
}
