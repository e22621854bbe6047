package org.vestibule.store.index;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.index.StoredFields;
import org.apache.lucene.search.BooleanClause;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.BoostQuery;
import org.apache.lucene.search.ConstantScoreQuery;
import org.apache.lucene.search.DisjunctionMaxQuery;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.ScoreDoc;
import org.apache.lucene.search.Sort;
import org.apache.lucene.search.SortField;
import org.apache.lucene.search.TopFieldCollectorManager;
import org.apache.lucene.search.TopFieldDocs;
import org.apache.lucene.store.FSDirectory;
import org.vestibule.dental.Notation;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.flow.BenchRecords;
import org.vestibule.search.QuestionOptions;
import org.vestibule.search.QuestionReader;
import org.vestibule.store.steps.WriteSteps;

/**
 * The searching half of {@code conformance/bench-whole}: makes an index of so many invented
 * photographs and times questions, beside Lucene alone running the identical query.
 */
final class FindBench {

  private static final ThreadMXBean CPU = ManagementFactory.getThreadMXBean();
  private static final int LIMIT = 50;
  private static final ViewCatalogue VIEWS = ViewCatalogue.standard();
  private static final LocalDate TODAY = LocalDate.of(2026, 3, 14);

  /** Changes made as they are asked for. */
  private record Made(BenchRecords records, int count, Map<Long, Change> kept)
      implements IndexChanges {

    Made(BenchRecords records, int count) {
      this(records, count, new HashMap<>());
    }

    @Override
    public String practice() {
      return "bench";
    }

    @Override
    public Optional<Change> last() {
      return at(count);
    }

    @Override
    public Optional<Change> at(long sequence) {
      // The last one is asked for by every question; making it is not the program's work.
      return Optional.of(
          sequence == count ? kept.computeIfAbsent(sequence, this::made) : made(sequence));
    }

    private Change made(long sequence) {
      IndexRecord record = records.record(Math.toIntExact(sequence) - 1);
      String json = IndexRecordJson.write(record);
      return new Change(sequence, record.hash(), json, "mark " + sequence);
    }

    @Override
    public List<Change> after(long sequence, int most) {
      List<Change> page = new ArrayList<>();
      for (long next = sequence + 1; next <= Math.min(count, sequence + most); next++) {
        page.add(at(next).orElseThrow());
      }
      return page;
    }
  }

  /** One way to answer. */
  private interface Way {
    int run() throws IOException;
  }

  private FindBench() {}

  /** Arguments: an empty folder, how many photographs, how many questions, the seed. */
  public static void main(String[] arguments) throws IOException {
    Path folder = Path.of(arguments[0]);
    int count = Integer.parseInt(arguments[1]);
    int questions = Integer.parseInt(arguments[2]);
    long seed = Long.parseLong(arguments[3]);
    Made changes = new Made(new BenchRecords(count), count);
    try (LucenePhotoIndex index = new LucenePhotoIndex(folder, WriteSteps.PASS);
        FSDirectory directory = FSDirectory.open(folder)) {
      long start = System.nanoTime();
      index.follow(changes);
      say("made in s", (System.nanoTime() - start) / 1e9);
      say("MB", size(folder) / 1e6);
      try (DirectoryReader reader = DirectoryReader.open(directory)) {
        say("segments", reader.leaves().size());
        ask(index, changes, new IndexSearcher(reader), questions, seed);
      }
    }
  }

  private static void ask(
      LucenePhotoIndex index, Made changes, IndexSearcher bare, int questions, long seed)
      throws IOException {
    Map<String, List<double[]>> all = new LinkedHashMap<>();
    for (int kind = 0; kind < BenchRecords.KINDS; kind++) {
      Random random = new Random(seed + kind);
      Map<String, List<double[]>> ways = new LinkedHashMap<>();
      // As many again before, so that each way is warm.
      for (int i = -questions; i < questions; i++) {
        Map<String, double[]> took = once(index, changes, bare, kind, random);
        if (i >= 0) {
          took.forEach((way, one) -> ways.computeIfAbsent(way, any -> new ArrayList<>()).add(one));
        }
      }
      String example = changes.records().question(kind, new Random(seed + kind));
      rows(example.replaceAll("[0-9]{5,}", "n"), ways);
      ways.forEach((way, some) -> all.computeIfAbsent(way, any -> new ArrayList<>()).addAll(some));
    }
    rows("all", all);
  }

  /**
   * Each way once, on the same question: milliseconds of the processor, and by the clock. Whichever
   * comes first finds nothing of it in the processor's caches, so they take turns in that.
   */
  private static Map<String, double[]> once(
      LucenePhotoIndex index, Made changes, IndexSearcher bare, int kind, Random random)
      throws IOException {
    String words = changes.records().question(kind, random);
    IndexQuery query = understood(index, words);
    Map<String, Way> ways = new LinkedHashMap<>();
    ways.put("find", () -> find(index, changes, words));
    ways.put("of which following", () -> index.follow(changes).toString().length());
    ways.put("of which understanding", () -> understood(index, words).limit());
    ways.put("of which answering", () -> index.search(query).hits().size());
    ways.put("Lucene, the same questions and texts", () -> answer(bare, query));
    ways.put("Lucene, one question, all counted, texts", () -> atOnce(bare, query));
    ways.put("Lucene, top 50 alone", () -> top(bare, query).scoreDocs.length);
    List<String> turns = new ArrayList<>(ways.keySet());
    Collections.rotate(turns, random.nextInt(turns.size()));
    Map<String, double[]> took = new HashMap<>();
    for (String way : turns) {
      took.put(way, millis(ways.get(way)));
    }
    Map<String, double[]> inOrder = new LinkedHashMap<>();
    ways.keySet().forEach(way -> inOrder.put(way, took.get(way)));
    return inOrder;
  }

  private static IndexQuery understood(LucenePhotoIndex index, String words) throws IOException {
    return new QuestionReader(VIEWS, new TeethReader(Notation.ISO_3950), index, TODAY)
        .read(words, QuestionOptions.NONE)
        .orThrow()
        .query(LIMIT);
  }

  /** What the program does: follow, understand, ask, read the answers. */
  private static int find(LucenePhotoIndex index, Made changes, String words) throws IOException {
    index.follow(changes);
    return index.search(understood(index, words)).hits().size();
  }

  /** The identical queries by Lucene alone, counted as far, and the texts of the answers. */
  private static int answer(IndexSearcher bare, IndexQuery query) throws IOException {
    StoredFields stored = bare.storedFields();
    long total = 0;
    int seen = 0;
    int length = 0;
    for (Query asked : Queries.byTier(query)) {
      int room = LIMIT - seen;
      int count = (int) Math.max(room, IndexAnswer.COUNTED + 1 - total);
      TopFieldDocs top =
          bare.search(
              asked, new TopFieldCollectorManager(NewestFirst.ORDER, Math.max(1, room), count));
      total += top.totalHits.value;
      for (int at = 0; at < Math.min(room, top.scoreDocs.length); at++) {
        length += stored.document(top.scoreDocs[at].doc).get(Documents.JSON).length();
        seen++;
      }
      if (seen == LIMIT && total > IndexAnswer.COUNTED) {
        break;
      }
    }
    return length;
  }

  /**
   * As one would ask Lucene by itself: one question whose score is the tier, by score and then the
   * newest, all of them counted, and the texts of the answers.
   */
  private static int atOnce(IndexSearcher bare, IndexQuery query) throws IOException {
    int tiers = query.tiers().size();
    List<Query> weighted = new ArrayList<>();
    for (int tier = 0; tier < tiers; tier++) {
      Query flat = new ConstantScoreQuery(Queries.anyOf(query.tiers().get(tier)));
      weighted.add(new BoostQuery(flat, tiers - tier));
    }
    BooleanQuery.Builder all = new BooleanQuery.Builder();
    all.add(Queries.of(query), BooleanClause.Occur.FILTER);
    if (tiers > 0) {
      all.add(new DisjunctionMaxQuery(weighted, 0), BooleanClause.Occur.MUST);
    }
    Sort order =
        tiers == 0
            ? NewestFirst.ORDER
            : new Sort(SortField.FIELD_SCORE, NewestFirst.ORDER.getSort()[0]);
    Query asked = all.build();
    int length = bare.count(asked);
    StoredFields stored = bare.storedFields();
    for (ScoreDoc doc : bare.search(asked, LIMIT, order).scoreDocs) {
      length += stored.document(doc.doc).get(Documents.JSON).length();
    }
    return length;
  }

  /** The newest by Lucene alone, as it gives them by itself: no tiers, no total, no texts. */
  private static TopFieldDocs top(IndexSearcher bare, IndexQuery query) throws IOException {
    return bare.search(Queries.of(query), LIMIT, NewestFirst.ORDER);
  }

  private static double[] millis(Way way) throws IOException {
    long start = System.nanoTime();
    long cpu = CPU.getCurrentThreadCpuTime();
    if (way.run() < 0) {
      throw new IllegalStateException("fewer than no answers");
    }
    long took = CPU.getCurrentThreadCpuTime() - cpu;
    return new double[] {took / 1e6, (System.nanoTime() - start) / 1e6};
  }

  private static void rows(String what, Map<String, List<double[]>> ways) {
    ways.forEach(
        (way, all) ->
            System.out.printf(
                Locale.ROOT,
                "ask\t%s\t%s\t%.2f\t%.2f\t%.2f\t%.2f%n",
                what,
                way,
                at(all, 0, 0.5),
                at(all, 0, 0.99),
                at(all, 1, 0.5),
                at(all, 1, 0.99)));
  }

  private static double at(List<double[]> all, int which, double part) {
    double[] sorted = all.stream().mapToDouble(one -> one[which]).sorted().toArray();
    return sorted[(int) Math.ceil(part * sorted.length) - 1];
  }

  private static void say(String what, double value) {
    System.out.printf(Locale.ROOT, "%s\t%.2f%n", what, value);
  }

  private static long size(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.mapToLong(file -> file.toFile().length()).sum();
    }
  }
}
