package org.vestibule.search;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dental.Notation;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.store.index.IndexAnswer;
import org.vestibule.store.index.IndexChanges;
import org.vestibule.store.index.IndexRecordJson;
import org.vestibule.store.index.LucenePhotoIndex;
import org.vestibule.store.steps.WriteSteps;

/** Photographs in a real index, and somebody who asks for them. Today is 14 March 2026. */
final class Shelf implements AutoCloseable {

  static final LocalDate TODAY = LocalDate.of(2026, 3, 14);

  private final List<IndexChanges.Change> changes = new ArrayList<>();
  private final Map<String, QuestionReader> readers = new HashMap<>();
  private final LucenePhotoIndex index;

  Shelf(Path folder) throws IOException {
    index = new LucenePhotoIndex(folder, WriteSteps.PASS);
    follow();
  }

  static Shelf holding(Path folder, List<Photo> photos) throws IOException {
    Shelf shelf = new Shelf(folder);
    for (Photo photo : photos) {
      shelf.change(photo.record().hash(), IndexRecordJson.write(photo.record()));
    }
    shelf.follow();
    return shelf;
  }

  void put(Photo photo) throws IOException {
    change(photo.record().hash(), IndexRecordJson.write(photo.record()));
    follow();
  }

  /** What the ledger says when a filing is rejected. */
  void reject(String id) throws IOException {
    long next = changes.size() + 1L;
    changes.add(new IndexChanges.Change(next, Photo.hash(id), null, "mark " + next));
    follow();
  }

  private void change(String hash, String json) {
    long next = changes.size() + 1L;
    changes.add(new IndexChanges.Change(next, hash, json, "mark " + next));
  }

  private void follow() throws IOException {
    index.follow(new Changes(changes));
  }

  LucenePhotoIndex index() {
    return index;
  }

  Outcome<Question> read(String words) throws IOException {
    return read(words, QuestionOptions.NONE, Notation.ISO_3950);
  }

  Outcome<Question> read(String words, QuestionOptions options, Notation notation)
      throws IOException {
    return read(words, options, notation, TODAY);
  }

  Outcome<Question> read(String words, QuestionOptions options, Notation notation, LocalDate today)
      throws IOException {
    QuestionReader reader =
        readers.computeIfAbsent(
            notation + " " + today,
            key ->
                new QuestionReader(
                    ViewCatalogue.standard(), new TeethReader(notation), index, today));
    return reader.read(words, options);
  }

  /** How the words were understood. */
  List<String> understood(String words) throws IOException {
    return read(words).orThrow().understood();
  }

  /** Why the words are refused, and what to do, as one line. */
  String refused(String words) throws IOException {
    return sentence(read(words));
  }

  static String sentence(Outcome<Question> read) {
    return read instanceof Refused<Question> refused
        ? refused.sentence()
        : "not refused but understood as " + read.orThrow().understood();
  }

  /** Ids of what is found, in order. */
  List<String> ids(String words) throws IOException {
    return found(words).hits().stream().map(hit -> hit.record().id()).toList();
  }

  /** Ids of what is found, each with the words for how close it is. */
  List<String> closeness(String words) throws IOException {
    Question question = read(words).orThrow();
    return index.search(question.query(1000)).hits().stream()
        .map(hit -> hit.record().id() + ": " + question.tierWords().get(hit.tier()))
        .toList();
  }

  List<String> ids(Question question) throws IOException {
    return index.search(question.query(1000)).hits().stream()
        .map(hit -> hit.record().id())
        .toList();
  }

  IndexAnswer found(String words) throws IOException {
    return index.search(read(words).orThrow().query(1000));
  }

  @Override
  public void close() throws IOException {
    index.close();
  }

  /** What the ledger would say. */
  private record Changes(List<Change> all) implements IndexChanges {

    @Override
    public String practice() {
      return "mill";
    }

    @Override
    public Optional<Change> last() {
      return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
    }

    @Override
    public Optional<Change> at(long sequence) {
      return all.stream().filter(change -> change.sequence() == sequence).findFirst();
    }

    @Override
    public List<Change> after(long sequence, int most) {
      return all.stream().filter(change -> change.sequence() > sequence).limit(most).toList();
    }
  }
}
