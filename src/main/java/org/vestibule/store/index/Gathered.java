package org.vestibule.store.index;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.lucene.index.FieldInfo;
import org.apache.lucene.index.IndexReader;
import org.apache.lucene.index.StoredFieldVisitor;
import org.apache.lucene.index.StoredFields;
import org.apache.lucene.search.TopDocs;
import org.apache.lucene.search.TotalHits;

/** The answers of one tier after another, up to what is wanted, and how many there are. */
final class Gathered {

  private final int offset;
  private final int wanted;
  private final List<Place> places = new ArrayList<>();
  private int seen;
  private long total;
  private boolean counted = true;

  /** Where an answer lies, and the tier that it met. */
  private record Place(int doc, int tier) {}

  /**
   * Nothing yet.
   *
   * @param offset how many to pass over
   * @param wanted how many to see at most, those that are passed over included
   */
  Gathered(int offset, int wanted) {
    this.offset = offset;
    this.wanted = wanted;
  }

  /** How many more are wanted. */
  int room() {
    return wanted - seen;
  }

  /** Up to how many more are to be counted one by one. */
  int toCount() {
    return Math.toIntExact(Math.max(room(), Math.max(0, IndexAnswer.COUNTED + 1 - total)));
  }

  /**
   * True if all that are wanted are here, and there are more than are counted. Who wants more than
   * that is told whether it was all, so that every tier is asked.
   */
  boolean isEnough() {
    return wanted <= IndexAnswer.COUNTED && room() <= 0 && total > IndexAnswer.COUNTED;
  }

  void add(TopDocs found, int tier) {
    total += found.totalHits.value;
    counted &= found.totalHits.relation == TotalHits.Relation.EQUAL_TO;
    int taken = Math.min(room(), found.scoreDocs.length);
    for (int at = Math.max(0, offset - seen); at < taken; at++) {
      places.add(new Place(found.scoreDocs[at].doc, tier));
    }
    seen += taken;
  }

  /**
   * The answer.
   *
   * @param reader what was asked
   * @param last true if no tier is left that was not asked for
   */
  IndexAnswer answer(IndexReader reader, boolean last) throws IOException {
    StoredFields stored = reader.storedFields();
    OneText text = new OneText();
    List<IndexAnswer.Hit> hits = new ArrayList<>(places.size());
    for (Place place : places) {
      stored.document(place.doc(), text);
      hits.add(new IndexAnswer.Hit(IndexRecordJson.read(text.value), place.tier()));
    }
    return last && counted
        ? new IndexAnswer(hits, Math.toIntExact(total), false)
        : new IndexAnswer(hits, Math.max(IndexAnswer.COUNTED, seen), true);
  }

  /** Takes the text of a document's description, and makes nothing else of it. */
  private static final class OneText extends StoredFieldVisitor {
    private String value = "";

    @Override
    public Status needsField(FieldInfo field) {
      return field.name.equals(Documents.JSON) ? Status.YES : Status.NO;
    }

    @Override
    public void stringField(FieldInfo field, String text) {
      value = text;
    }
  }
}
