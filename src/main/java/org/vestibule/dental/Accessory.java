package org.vestibule.dental;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A thing used for the photograph that may be visible in it, or its light.
 *
 * @param key its lasting name
 * @param name its name for people
 * @param words phrases people use for it, the name included
 * @param code its code (CID 4072), if there is one
 * @param description which kind it is, for the device description
 */
public record Accessory(
    String key, String name, List<String> words, @Nullable Code code, String description) {

  public Accessory {
    words = List.copyOf(words);
  }
}
