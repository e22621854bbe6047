package org.vestibule.flow.keeping;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * What somebody wants copied where.
 *
 * @param to the backup folder; made if it is not there
 * @param secretTo where the secret goes; null if it is not to be copied
 * @param reread true if copies that are there already are read again and compared
 * @param keep how many of the newest snapshots stay, besides the last one of each month
 * @param program the program's name and version
 */
public record BackupRequest(
    Path to, @Nullable Path secretTo, boolean reread, int keep, String program) {}
