package org.vestibule.store.index;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.IndexWriterConfig;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.SegmentInfos;
import org.apache.lucene.index.Term;
import org.apache.lucene.store.Directory;
import org.vestibule.store.steps.WriteStep;
import org.vestibule.store.steps.WriteSteps;

/** Applies changes to the index, all of them in one commit. */
final class IndexWriting {

  private static final int PAGE = 500;

  /**
   * An index that is made again is written in fewer, larger pieces, which are merged less often.
   */
  private static final double REBUILD_BUFFER_MB = 64;

  private final Directory directory;
  private final WriteSteps steps;

  IndexWriting(Directory directory, WriteSteps steps) {
    this.directory = directory;
    this.steps = steps;
  }

  /**
   * The stamp of the last commit.
   *
   * @return empty if there is no index or it has another layout
   */
  Optional<Stamp> stamp() throws IOException {
    return DirectoryReader.indexExists(directory)
        ? Stamp.of(SegmentInfos.readLatestCommit(directory).getUserData())
        : Optional.empty();
  }

  /** Reads every byte of the last commit and holds it against its checksums. */
  void requireSound() throws IOException {
    if (!DirectoryReader.indexExists(directory)) {
      return;
    }
    try (DirectoryReader reader = DirectoryReader.open(directory)) {
      for (LeafReaderContext leaf : reader.leaves()) {
        leaf.reader().checkIntegrity();
      }
    }
  }

  /** Applies what comes after the stamp. */
  CaughtUp apply(IndexChanges changes, Stamp from) throws IOException {
    return write(changes, from, IndexWriterConfig.OpenMode.APPEND, "");
  }

  /** Makes the index again from all changes. */
  CaughtUp rebuild(IndexChanges changes, String why) throws IOException {
    Stamp none = new Stamp(changes.practice(), 0, "");
    return write(changes, none, IndexWriterConfig.OpenMode.CREATE, why);
  }

  private CaughtUp write(
      IndexChanges changes, Stamp from, IndexWriterConfig.OpenMode mode, String why)
      throws IOException {
    boolean again = mode == IndexWriterConfig.OpenMode.CREATE;
    IndexWriterConfig config = new IndexWriterConfig(null).setOpenMode(mode);
    config.setCommitOnClose(false);
    config.setIndexSort(NewestFirst.ORDER);
    if (again) {
      config.setRAMBufferSizeMB(REBUILD_BUFFER_MB);
    }
    try (IndexWriter writer = new IndexWriter(directory, config)) {
      Stamp to = applyAll(changes, from, writer);
      writer.setLiveCommitData(to.data().entrySet());
      steps.reached(WriteStep.INDEX_COMMITTING);
      writer.commit();
      steps.reached(WriteStep.INDEX_COMMITTED);
      CaughtUp.Kind kind = again ? CaughtUp.Kind.REBUILT : CaughtUp.Kind.APPLIED;
      return new CaughtUp(kind, to.sequence() - from.sequence(), why);
    }
  }

  private static Stamp applyAll(IndexChanges changes, Stamp from, IndexWriter writer)
      throws IOException {
    Stamp at = from;
    List<IndexChanges.Change> page = changes.after(at.sequence(), PAGE);
    while (!page.isEmpty()) {
      for (IndexChanges.Change change : page) {
        apply(change, writer);
        at = new Stamp(changes.practice(), change.sequence(), change.mark());
      }
      page = changes.after(at.sequence(), PAGE);
    }
    return at;
  }

  private static void apply(IndexChanges.Change change, IndexWriter writer) throws IOException {
    Term id = new Term(IndexField.HASH.fieldName(), change.id());
    String record = change.record();
    if (record == null) {
      writer.deleteDocuments(id);
    } else {
      writer.updateDocument(id, Documents.of(change.id(), record));
    }
  }
}
