package org.vestibule.store.index;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.store.Directory;
import org.jspecify.annotations.Nullable;

/** The commit of an index that is read at present; for one thread at a time. */
final class OpenIndex {

  private final Path folder;
  private final Directory directory;
  private @Nullable DirectoryReader open;
  private @Nullable IndexSearcher searcher;
  private @Nullable Stamp stamp;
  private Optional<LastCommit> seen = Optional.empty();

  OpenIndex(Path folder, Directory directory) {
    this.folder = folder;
    this.directory = directory;
  }

  /** How far the commit that is open had come; empty if none is, or if it doesn't say. */
  Optional<Stamp> stamp() throws IOException {
    DirectoryReader reader = open;
    if (reader == null) {
      return Optional.empty();
    }
    if (stamp == null) {
      stamp = Stamp.of(reader.getIndexCommit().getUserData()).orElse(null);
    }
    return Optional.ofNullable(stamp);
  }

  /**
   * What was last followed; what others have committed since is seen when it follows again. None if
   * what is there has another layout, whose answers would be wrong.
   */
  Optional<IndexSearcher> searcher() throws IOException {
    if (open == null) {
      refresh();
    }
    DirectoryReader reader = open;
    if (reader != null && stamp().isEmpty()) {
      return Optional.empty();
    }
    if (reader != null && searcher == null) {
      searcher = new IndexSearcher(reader);
    }
    return Optional.ofNullable(searcher);
  }

  /** Opens the last commit, if it is not the one that is open. */
  void refresh() throws IOException {
    if (open != null && seen.isPresent() && seen.get().isStillLast(folder)) {
      return;
    }
    // What is there is looked at before it is opened: a commit that comes between is seen next
    // time.
    Optional<LastCommit> last = LastCommit.in(folder, directory);
    if (open != null && last.isPresent()) {
      if (last.equals(seen)) {
        return;
      }
      if (seen.isEmpty() || !last.get().mayFollow(seen.get())) {
        forget();
      }
    }
    open(last);
  }

  private void open(Optional<LastCommit> last) throws IOException {
    DirectoryReader reader = open;
    if (reader != null) {
      DirectoryReader newer = newer(reader);
      if (newer != null) {
        open = newer;
        searcher = null;
        stamp = null;
        reader.close();
      }
    } else if (Files.isDirectory(folder) && DirectoryReader.indexExists(directory)) {
      open = DirectoryReader.open(directory);
    }
    seen = last;
  }

  private @Nullable DirectoryReader newer(DirectoryReader reader) throws IOException {
    try {
      return DirectoryReader.openIfChanged(reader);
    } catch (IllegalStateException madeAnew) {
      // Lucene's word for an index whose files were removed and made again meanwhile.
      return DirectoryReader.open(directory);
    }
  }

  /** What is open knows files that are about to be others of the same names. */
  void forget() throws IOException {
    if (open != null) {
      open.close();
      open = null;
      searcher = null;
      stamp = null;
      seen = Optional.empty();
    }
  }
}
