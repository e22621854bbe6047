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
 */
public record IngestRequest(
    Path folder, Path manifest, String by, boolean dryRun, boolean settle) {}
