package org.vestibule.store.index;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.Optional;
import org.apache.lucene.index.IndexFileNames;
import org.apache.lucene.index.SegmentInfos;
import org.apache.lucene.store.Directory;

/**
 * By what one sees that an index has another last commit than before, without reading it: Lucene
 * never writes the file of a commit again, and an index made anew has one of another time.
 *
 * @param file the name of the commit's file
 */
record LastCommit(String file, FileTime at, long bytes) {

  /** True if Lucene may have made this commit in the index that had the other one. */
  boolean mayFollow(LastCommit earlier) {
    return SegmentInfos.generationFromSegmentsFileName(file)
        > SegmentInfos.generationFromSegmentsFileName(earlier.file);
  }

  /**
   * True if this is still the last commit: its file is as it was, and the one that Lucene would
   * write next is not there. Two looks at one file each cost far less than a list of the folder;
   * Lucene leaves a number out only where a commit failed, and takes the earlier file away then.
   */
  boolean isStillLast(Path folder) throws IOException {
    String next =
        IndexFileNames.fileNameFromGeneration(
            IndexFileNames.SEGMENTS, "", SegmentInfos.generationFromSegmentsFileName(file) + 1);
    return !folder.resolve(next).toFile().exists() && of(folder, file).equals(Optional.of(this));
  }

  /** The last commit of an index; empty if there is none, or if it went away meanwhile. */
  static Optional<LastCommit> in(Path folder, Directory directory) throws IOException {
    if (!Files.isDirectory(folder)) {
      return Optional.empty();
    }
    String name = SegmentInfos.getLastCommitSegmentsFileName(directory);
    if (name == null) {
      return Optional.empty();
    }
    return of(folder, name);
  }

  private static Optional<LastCommit> of(Path folder, String name) throws IOException {
    try {
      BasicFileAttributes file =
          Files.readAttributes(folder.resolve(name), BasicFileAttributes.class);
      return Optional.of(new LastCommit(name, file.lastModifiedTime(), file.size()));
    } catch (NoSuchFileException gone) {
      return Optional.empty();
    }
  }
}
