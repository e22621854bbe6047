package org.vestibule.store.index;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.apache.lucene.document.IntPoint;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.BooleanClause;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.BoostQuery;
import org.apache.lucene.search.ConstantScoreQuery;
import org.apache.lucene.search.DisjunctionMaxQuery;
import org.apache.lucene.search.FieldDoc;
import org.apache.lucene.search.MatchAllDocsQuery;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.Sort;
import org.apache.lucene.search.SortField;
import org.apache.lucene.search.TermQuery;
import org.jspecify.annotations.Nullable;

/** Puts a question into the engine's terms. A photograph's score is its tier alone. */
final class Queries {

  private Queries() {}

  /** By tier if there are any, then the newest first, what has no date last, then by hash. */
  static Sort order(IndexQuery query) {
    SortField newest = new SortField(Documents.TIME, SortField.Type.LONG, true);
    newest.setMissingValue(Long.MIN_VALUE);
    SortField hash = new SortField(Documents.ORDER, SortField.Type.STRING);
    return query.tiers().isEmpty()
        ? new Sort(newest, hash)
        : new Sort(SortField.FIELD_SCORE, newest, hash);
  }

  static Query of(IndexQuery query) {
    BooleanQuery.Builder all = new BooleanQuery.Builder();
    all.add(tiers(query.tiers()), BooleanClause.Occur.MUST);
    for (AnyOf anyOf : query.must()) {
      all.add(anyOf(anyOf), BooleanClause.Occur.FILTER);
    }
    if (query.from() != null || query.to() != null) {
      all.add(days(query.from(), query.to()), BooleanClause.Occur.FILTER);
    }
    return all.build();
  }

  private static Query tiers(List<AnyOf> tiers) {
    if (tiers.isEmpty()) {
      return new ConstantScoreQuery(new MatchAllDocsQuery());
    }
    List<Query> weighted = new ArrayList<>();
    for (int tier = 0; tier < tiers.size(); tier++) {
      Query flat = new ConstantScoreQuery(anyOf(tiers.get(tier)));
      weighted.add(new BoostQuery(flat, tiers.size() - tier));
    }
    return new DisjunctionMaxQuery(weighted, 0);
  }

  /** Which tier an answer met, by the score that it was ordered by. */
  static int tier(FieldDoc doc, IndexQuery query) {
    int tiers = query.tiers().size();
    return tiers == 0 ? 0 : tiers - Math.round((Float) doc.fields[0]);
  }

  static Query anyOf(AnyOf anyOf) {
    BooleanQuery.Builder any = new BooleanQuery.Builder();
    for (IndexTerm term : anyOf.terms()) {
      any.add(term(term), BooleanClause.Occur.SHOULD);
    }
    return any.build();
  }

  static Query term(IndexTerm term) {
    return new TermQuery(lucene(term));
  }

  static Term lucene(IndexTerm term) {
    return new Term(term.field().fieldName(), term.value());
  }

  private static Query days(@Nullable LocalDate from, @Nullable LocalDate to) {
    int first = from == null ? Integer.MIN_VALUE : Math.toIntExact(from.toEpochDay());
    int last = to == null ? Integer.MAX_VALUE : Math.toIntExact(to.toEpochDay());
    return IntPoint.newRangeQuery(Documents.DAY, first, last);
  }
}
