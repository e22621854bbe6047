package org.vestibule.intake;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;

/**
 * A folder of real photographs, named by {@code VESTIBULE_PHOTOS}; without it a test is skipped.
 */
public final class Corpus {

  private Corpus() {}

  public static Path require() {
    String property = System.getProperty("VESTIBULE_PHOTOS", System.getenv("VESTIBULE_PHOTOS"));
    if (property == null || !Files.isDirectory(Path.of(property))) {
      String message =
          "SKIPPED: set VESTIBULE_PHOTOS to a folder of real photographs to read those too";
      System.err.println(message);
      Assumptions.abort(message);
    }
    return Path.of(property);
  }
}
