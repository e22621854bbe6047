package org.vestibule.store.index;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicBoolean;
import org.apache.lucene.document.Document;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.IndexWriterConfig;
import org.apache.lucene.index.SegmentInfos;
import org.apache.lucene.store.Directory;
import org.apache.lucene.store.Lock;
import org.apache.lucene.store.NIOFSDirectory;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.store.steps.WriteStep;
import org.vestibule.store.steps.WriteSteps;

/** The index follows numbered changes, and is made again where it doesn't fit them. */
class IndexFollowsTest {

  @TempDir private Path folder;
  private LucenePhotoIndex index;
  private FakeChanges changes;

  @BeforeEach
  void open() throws IOException {
    index = new LucenePhotoIndex(folder, WriteSteps.PASS);
    changes = new FakeChanges("willow-lane").put("a", 16, 1).put("b", 26, 2).put("c", 36, 3);
  }

  @AfterEach
  void close() throws IOException {
    index.close();
  }

  private static List<String> notes(PhotoIndex index) throws IOException {
    return index.search(IndexQuery.all(100)).hits().stream()
        .map(hit -> hit.record().note())
        .toList();
  }

  private static CaughtUp done(CaughtUp.Kind kind, long changes, String why) {
    return new CaughtUp(kind, changes, why);
  }

  @Test
  void anIndexThatIsNotThereYetAnswersNothing() throws IOException {
    assertThat(index.sequence()).isZero();
    assertThat(notes(index)).isEmpty();
    assertThat(index.has(new IndexTerm(IndexField.TOOTH, "16"))).isFalse();
    assertThat(index.values(IndexField.TOOTH)).isEmpty();
  }

  @Test
  void itIsMadeThenCatchesUpThenHasNothingToDo() throws IOException {
    assertThat(index.follow(changes))
        .isEqualTo(done(CaughtUp.Kind.REBUILT, 3, "there was none, or one of another layout"));
    assertThat(notes(index)).containsExactly("c", "b", "a");
    changes.put("d", 46, 4).remove("b").put("a", 17, 9);
    assertThat(index.follow(changes)).isEqualTo(done(CaughtUp.Kind.APPLIED, 3, ""));
    assertThat(index.sequence()).isEqualTo(6);
    assertThat(notes(index)).containsExactly("a", "d", "c");
    assertThat(index.values(IndexField.TOOTH)).containsExactly("17", "36", "46");
    assertThat(index.follow(changes)).isEqualTo(done(CaughtUp.Kind.CURRENT, 0, ""));
  }

  @Test
  void moreChangesThanOnePageAreAllApplied() throws IOException {
    for (int n = 0; n < 1100; n++) {
      changes.put("n" + n % 7, 11, 1 + n % 28);
    }
    assertThat(index.follow(changes).changes()).isEqualTo(1103);
    assertThat(index.search(IndexQuery.all(1)).total()).isEqualTo(10);
  }

  @Test
  void reindexGivesTheSameAnswers() throws IOException {
    index.follow(changes);
    changes.remove("a").put("d", 46, 4).put("b", 27, 8);
    index.follow(changes);
    IndexAnswer before = index.search(IndexQuery.all(100));
    assertThat(index.rebuild(changes))
        .isEqualTo(done(CaughtUp.Kind.REBUILT, 6, "it was asked for"));
    assertThat(index.search(IndexQuery.all(100))).isEqualTo(before);
    assertThat(before.total()).isEqualTo(3);
    assertThat(index.sequence()).isEqualTo(6);
  }

  /** Lucene names the first commit of any index alike, so that the name alone tells nothing. */
  @Test
  void anIndexThatAnotherProgramMadeAnewIsSeen() throws IOException {
    index.follow(changes);
    assertThat(notes(index)).containsExactly("c", "b", "a");
    String before = SegmentInfos.getLastCommitSegmentsFileName(folder.toFile().list());
    for (File file : folder.toFile().listFiles()) {
      Files.delete(file.toPath());
    }
    changes.put("d", 46, 4);
    try (LucenePhotoIndex other = new LucenePhotoIndex(folder, WriteSteps.PASS)) {
      other.follow(changes);
    }
    assertThat(SegmentInfos.getLastCommitSegmentsFileName(folder.toFile().list()))
        .isEqualTo(before);
    assertThat(index.follow(changes)).isEqualTo(done(CaughtUp.Kind.CURRENT, 0, ""));
    assertThat(notes(index)).containsExactly("d", "c", "b", "a");
  }

  @Test
  void theIndexOfAnotherPracticeIsMadeAgain() throws IOException {
    index.follow(new FakeChanges("mill-road").put("x", 11, 1).put("y", 12, 2).put("z", 13, 3));
    assertThat(index.follow(changes))
        .isEqualTo(done(CaughtUp.Kind.REBUILT, 3, "it belongs to another practice"));
    assertThat(notes(index)).containsExactly("c", "b", "a");
  }

  @Test
  void anIndexAheadOfTheLedgerIsMadeAgain() throws IOException {
    index.follow(changes);
    assertThat(index.follow(new FakeChanges("willow-lane").put("a", 16, 1)))
        .isEqualTo(done(CaughtUp.Kind.REBUILT, 1, "it is ahead of the ledger"));
    assertThat(notes(index)).containsExactly("a");
    assertThat(index.follow(new FakeChanges("willow-lane")).why())
        .isEqualTo("it is ahead of the ledger");
    assertThat(notes(index)).isEmpty();
  }

  @Test
  void anIndexThatFollowedAnotherHistoryIsMadeAgain() throws IOException {
    index.follow(new FakeChanges("willow-lane").put("x", 11, 1).put("y", 12, 2));
    assertThat(index.follow(changes))
        .isEqualTo(done(CaughtUp.Kind.REBUILT, 3, "it followed another ledger"));
    assertThat(notes(index)).containsExactly("c", "b", "a");
  }

  @ParameterizedTest
  @CsvSource({"layout, 0", "layout, 99", "layout, ''", "sequence, many", "sequence, -1"})
  void anIndexOfAnotherLayoutIsMadeAgain(String key, String value) throws IOException {
    index.follow(changes);
    stampWith(key, value);
    assertThat(index.follow(changes))
        .isEqualTo(done(CaughtUp.Kind.REBUILT, 3, "there was none, or one of another layout"));
    assertThat(index.follow(changes).kind()).isEqualTo(CaughtUp.Kind.CURRENT);
    assertThat(notes(index)).containsExactly("c", "b", "a");
  }

  private void stampWith(String key, String value) throws IOException {
    Stamp stamp = new Stamp("willow-lane", 3, changes.last().orElseThrow().mark());
    Map<String, String> data = new HashMap<>(stamp.data());
    data.put(key, value);
    try (Directory directory = new NIOFSDirectory(folder);
        IndexWriter writer = new IndexWriter(directory, new IndexWriterConfig())) {
      writer.setLiveCommitData(data.entrySet());
      writer.commit();
    }
  }

  @Test
  void whileAnotherWritesTheReaderAnswersFromTheLastCommit() throws IOException {
    index.follow(changes);
    changes.put("d", 46, 4);
    try (Directory directory = new NIOFSDirectory(folder);
        Lock held = directory.obtainLock(IndexWriter.WRITE_LOCK_NAME)) {
      assertThat(index.follow(changes)).isEqualTo(done(CaughtUp.Kind.BUSY, 0, ""));
      assertThat(index.rebuild(changes)).isEqualTo(done(CaughtUp.Kind.BUSY, 0, ""));
      assertThat(notes(index)).containsExactly("c", "b", "a");
      assertThat(index.sequence()).isEqualTo(3);
      try (LucenePhotoIndex second = new LucenePhotoIndex(folder, WriteSteps.PASS)) {
        assertThat(notes(second)).containsExactly("c", "b", "a");
      }
      held.ensureValid();
    }
    assertThat(index.follow(changes)).isEqualTo(done(CaughtUp.Kind.APPLIED, 1, ""));
  }

  /**
   * An index of an older layout would answer wrongly; while another process makes it, none does.
   */
  @Test
  void whileAnIndexOfAnotherLayoutIsMadeAgainNothingAnswers() throws IOException {
    Path elsewhere = folder.resolve("older");
    try (Directory directory = new NIOFSDirectory(elsewhere);
        IndexWriter writer = new IndexWriter(directory, new IndexWriterConfig(null))) {
      writer.addDocument(new Document());
      Map<String, String> older =
          Map.of("layout", "3", "practice", "willow-lane", "sequence", "1", "mark", "");
      writer.setLiveCommitData(older.entrySet());
      writer.commit();
      FakeChanges one = new FakeChanges("willow-lane").put("a", 16, 1);
      try (LucenePhotoIndex found = new LucenePhotoIndex(elsewhere, WriteSteps.PASS)) {
        assertThat(found.follow(one).kind()).isEqualTo(CaughtUp.Kind.BEING_MADE);
        assertThat(found.search(IndexQuery.all(9)).hits()).isEmpty();
        writer.close();
        assertThat(found.follow(one).kind()).isEqualTo(CaughtUp.Kind.REBUILT);
        assertThat(notes(found)).containsExactly("a");
      }
    }
  }

  @Test
  void anotherProcessSeesWhatThisOneCommitted() throws IOException {
    index.follow(changes);
    try (LucenePhotoIndex second = new LucenePhotoIndex(folder, WriteSteps.PASS)) {
      assertThat(notes(second)).hasSize(3);
      changes.put("d", 46, 4);
      index.follow(changes);
      assertThat(second.follow(changes).kind()).isEqualTo(CaughtUp.Kind.CURRENT);
      assertThat(notes(second)).containsExactly("d", "c", "b", "a");
    }
  }

  @Test
  void aCommitThatFailsLeavesTheLastOne() throws IOException {
    AtomicBoolean gone = new AtomicBoolean();
    WriteSteps steps =
        step -> {
          if (step == WriteStep.INDEX_COMMITTING && gone.get()) {
            throw new IOException("the disk is gone");
          }
        };
    try (LucenePhotoIndex failing = new LucenePhotoIndex(folder, steps)) {
      failing.follow(changes);
      gone.set(true);
      changes.put("d", 46, 4);
      assertThatThrownBy(() -> failing.follow(changes)).hasMessage("the disk is gone");
      assertThatThrownBy(() -> failing.rebuild(changes)).hasMessage("the disk is gone");
      assertThat(notes(failing)).containsExactly("c", "b", "a");
      gone.set(false);
      assertThat(failing.follow(changes)).isEqualTo(done(CaughtUp.Kind.APPLIED, 1, ""));
      assertThat(notes(failing)).containsExactly("d", "c", "b", "a");
    }
  }
}
