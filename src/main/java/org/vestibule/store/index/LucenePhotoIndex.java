package org.vestibule.store.index;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.apache.lucene.index.IndexReader;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.MultiTerms;
import org.apache.lucene.index.StoredFields;
import org.apache.lucene.index.Term;
import org.apache.lucene.index.Terms;
import org.apache.lucene.index.TermsEnum;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.TopFieldCollectorManager;
import org.apache.lucene.store.Directory;
import org.apache.lucene.store.LockObtainFailedException;
import org.apache.lucene.store.MMapDirectory;
import org.apache.lucene.util.Bits;
import org.apache.lucene.util.BytesRef;
import org.jspecify.annotations.Nullable;
import org.vestibule.store.steps.WriteSteps;

/** The index in a local folder, by Lucene. */
public final class LucenePhotoIndex implements PhotoIndex, AutoCloseable {

  private static final int FEW = 1000;
  private static final CaughtUp CURRENT = new CaughtUp(CaughtUp.Kind.CURRENT, 0, "");
  private static final CaughtUp BUSY = new CaughtUp(CaughtUp.Kind.BUSY, 0, "");
  private static final CaughtUp BEING_MADE = new CaughtUp(CaughtUp.Kind.BEING_MADE, 0, "");

  private final Directory directory;
  private final IndexWriting writing;
  private final OpenIndex open;

  /**
   * An index in this folder.
   *
   * @param folder on a local disk; it may not exist yet
   */
  public LucenePhotoIndex(Path folder, WriteSteps steps) throws IOException {
    this.directory = new MMapDirectory(folder);
    this.writing = new IndexWriting(directory, steps);
    this.open = new OpenIndex(folder, directory);
  }

  @Override
  public synchronized CaughtUp follow(IndexChanges changes) throws IOException {
    try {
      open.refresh();
      Optional<Stamp> stamp = open.stamp();
      Optional<IndexChanges.Change> last = changes.last();
      String misfit =
          stamp
              .map(s -> s.misfit(changes, last))
              .orElse("there was none, or one of another layout");
      if (!misfit.isEmpty()) {
        return rebuild(changes, misfit);
      }
      if (stamp.get().sequence() != last.map(IndexChanges.Change::sequence).orElse(0L)) {
        CaughtUp applied = writing.apply(changes, stamp.get());
        open.refresh();
        return applied;
      }
      return CURRENT;
    } catch (LockObtainFailedException e) {
      return busy();
    } catch (IOException e) {
      if (!IndexDamage.is(e)) {
        throw e;
      }
      return rebuild(changes, "it was damaged");
    }
  }

  @Override
  public synchronized CaughtUp rebuild(IndexChanges changes) throws IOException {
    return rebuild(changes, "it was asked for");
  }

  private CaughtUp rebuild(IndexChanges changes, String why) throws IOException {
    open.forget();
    try {
      return writing.rebuild(changes, why);
    } catch (LockObtainFailedException e) {
      return busy();
    } catch (IOException e) {
      if (!IndexDamage.is(e)) {
        throw e;
      }
      removeFiles();
      return writing.rebuild(changes, why);
    }
  }

  private CaughtUp busy() throws IOException {
    open.refresh();
    return open.stamp().isPresent() ? BUSY : BEING_MADE;
  }

  /** Everything but the lock, so that a commit no reader can open doesn't stand in the way. */
  private void removeFiles() throws IOException {
    for (String name : directory.listAll()) {
      if (!name.equals("write.lock")) {
        directory.deleteFile(name);
      }
    }
  }

  @Override
  public boolean isDamaged() throws IOException {
    try {
      writing.requireSound();
      return false;
    } catch (IOException e) {
      if (!IndexDamage.is(e)) {
        throw e;
      }
      return true;
    }
  }

  @Override
  public long sequence() throws IOException {
    try {
      return writing.stamp().map(Stamp::sequence).orElse(0L);
    } catch (IOException e) {
      if (!IndexDamage.is(e)) {
        throw e;
      }
      return 0;
    }
  }

  @Override
  public IndexAnswer search(IndexQuery query) throws IOException {
    return asking(IndexAnswer.NONE, searcher -> search(searcher, query));
  }

  /** Tier after tier, each only as far as its answers are wanted or counted. */
  private static IndexAnswer search(IndexSearcher searcher, IndexQuery query) throws IOException {
    Gathered gathered = new Gathered(query.offset(), wanted(searcher, query));
    List<Query> tiers = Queries.byTier(query);
    int tier = 0;
    for (; tier < tiers.size() && !gathered.isEnough(); tier++) {
      TopFieldCollectorManager newest =
          new TopFieldCollectorManager(
              NewestFirst.ORDER, Math.max(1, gathered.room()), gathered.toCount());
      gathered.add(searcher.search(tiers.get(tier), newest), tier);
    }
    return gathered.answer(searcher.getIndexReader(), tier == tiers.size());
  }

  /** How many answers to make room for: no more than there are, where many are asked for. */
  private static int wanted(IndexSearcher searcher, IndexQuery query) throws IOException {
    long most = (long) query.offset() + query.limit();
    return (int)
        (most <= FEW ? most : Math.min(most, Math.max(1, searcher.count(Queries.of(query)))));
  }

  @Override
  public int size() throws IOException {
    return asking(0, searcher -> searcher.getIndexReader().numDocs());
  }

  @Override
  public void each(Consumer<IndexRecord> somebody) throws IOException {
    asking(0, searcher -> each(searcher, somebody));
  }

  private static int each(IndexSearcher searcher, Consumer<IndexRecord> somebody)
      throws IOException {
    IndexReader reader = searcher.getIndexReader();
    StoredFields stored = reader.storedFields();
    for (LeafReaderContext leaf : reader.leaves()) {
      Bits live = leaf.reader().getLiveDocs();
      for (int doc = 0; doc < leaf.reader().maxDoc(); doc++) {
        if (live == null || live.get(doc)) {
          String json = stored.document(leaf.docBase + doc).get(Documents.JSON);
          somebody.accept(IndexRecordJson.read(json));
        }
      }
    }
    return reader.numDocs();
  }

  @Override
  public boolean has(IndexTerm term) throws IOException {
    return asking(false, searcher -> has(searcher, term));
  }

  private static boolean has(IndexSearcher searcher, IndexTerm term) throws IOException {
    Term asked = Queries.lucene(term);
    for (LeafReaderContext leaf : searcher.getIndexReader().leaves()) {
      if (isIn(leaf.reader().terms(asked.field()), asked.bytes())) {
        // The dictionary remembers removed photographs until segments are merged.
        return !leaf.reader().hasDeletions() || searcher.count(Queries.term(term)) > 0;
      }
    }
    return false;
  }

  /** Most words lie outside what a segment has in most fields, which is cheap to see. */
  private static boolean isIn(@Nullable Terms terms, BytesRef value) throws IOException {
    return terms != null
        && value.compareTo(terms.getMin()) >= 0
        && value.compareTo(terms.getMax()) <= 0
        && terms.iterator().seekExact(value);
  }

  @Override
  public Set<String> values(IndexField field) throws IOException {
    return asking(Set.of(), searcher -> values(searcher, field));
  }

  private static Set<String> values(IndexSearcher searcher, IndexField field) throws IOException {
    Set<String> values = new TreeSet<>();
    Terms terms = MultiTerms.getTerms(searcher.getIndexReader(), field.fieldName());
    TermsEnum each = terms == null ? TermsEnum.EMPTY : terms.iterator();
    for (BytesRef term = each.next(); term != null; term = each.next()) {
      String value = term.utf8ToString();
      if (has(searcher, new IndexTerm(field, value))) {
        values.add(value);
      }
    }
    return values;
  }

  /** A question to what is open. */
  @FunctionalInterface
  private interface Asking<T> {
    T of(IndexSearcher searcher) throws IOException;
  }

  /** Asks while nobody closes the reader: another thread may follow and open a newer one. */
  private <T> T asking(T ifEmpty, Asking<T> question) throws IOException {
    Optional<IndexSearcher> held = hold();
    if (held.isEmpty()) {
      return ifEmpty;
    }
    try {
      return question.of(held.get());
    } finally {
      held.get().getIndexReader().decRef();
    }
  }

  private synchronized Optional<IndexSearcher> hold() throws IOException {
    Optional<IndexSearcher> held = open.searcher();
    held.ifPresent(searcher -> searcher.getIndexReader().incRef());
    return held;
  }

  @Override
  public synchronized void close() throws IOException {
    open.forget();
    directory.close();
  }
}
