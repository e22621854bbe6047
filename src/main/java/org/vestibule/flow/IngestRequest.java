package org.vestibule.flow;

import java.nio.file.Path;

/**
 * What is to be taken in.
 *
 * @param folder with the photographs
 * @param manifest what a person says about each file; need not exist
 * @param by who runs it; recorded with every decision
 * @param dryRun true if nothing is to be written
 * @param settle false to take files that were changed just now
 * @param beside how many pictures are made beside the one that is being filed; 0 files one
 *     photograph after another
 */
public record IngestRequest(
    Path folder, Path manifest, String by, boolean dryRun, boolean settle, int beside) {

  public IngestRequest {
    if (beside < 0) {
      throw new IllegalArgumentException("a number of pictures must not be below 0: " + beside);
    }
  }

  /** One photograph after another. */
  public IngestRequest(Path folder, Path manifest, String by, boolean dryRun, boolean settle) {
    this(folder, manifest, by, dryRun, settle, 0);
  }

  /** The same with as many pictures beside one another as there are processors. */
  public IngestRequest onAllProcessors() {
    int processors = Runtime.getRuntime().availableProcessors();
    return new IngestRequest(folder, manifest, by, dryRun, settle, processors);
  }
}
