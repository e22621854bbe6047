package org.vestibule.flow.keeping;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * What somebody wants back, and where.
 *
 * @param from the backup folder
 * @param snapshot name of a moment; null for the newest
 * @param secret the copy of the practice's secret
 * @param home the home folder
 */
public record RestoreRequest(Path from, @Nullable String snapshot, Path secret, Path home) {}
