package org.vestibule.store.index;

import java.util.ArrayList;
import java.util.List;
import org.apache.lucene.document.SortedSetDocValuesField;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.BooleanClause;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.IndexOrDocValuesQuery;
import org.apache.lucene.search.MatchAllDocsQuery;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.TermQuery;
import org.apache.lucene.util.BytesRef;

/** Puts a question into the engine's terms. */
final class Queries {

  private Queries() {}

  /** Everything that answers, whatever its tier. */
  static Query of(IndexQuery query) {
    List<IndexTerm> any = query.tiers().stream().flatMap(tier -> tier.terms().stream()).toList();
    BooleanQuery.Builder all = rest(query);
    if (!any.isEmpty()) {
      all.add(anyOf(new AnyOf(any)), BooleanClause.Occur.FILTER);
    }
    return all.build();
  }

  /** What answers by each tier and by none before it; one question for all if there are none. */
  static List<Query> byTier(IndexQuery query) {
    if (query.tiers().isEmpty()) {
      return List.of(of(query));
    }
    List<Query> each = new ArrayList<>();
    for (int tier = 0; tier < query.tiers().size(); tier++) {
      BooleanQuery.Builder all = rest(query);
      all.add(anyOf(query.tiers().get(tier)), BooleanClause.Occur.FILTER);
      for (AnyOf earlier : query.tiers().subList(0, tier)) {
        all.add(anyOf(earlier), BooleanClause.Occur.MUST_NOT);
      }
      each.add(all.build());
    }
    return each;
  }

  private static BooleanQuery.Builder rest(IndexQuery query) {
    BooleanQuery.Builder all = new BooleanQuery.Builder();
    for (AnyOf anyOf : query.must()) {
      all.add(anyOf(anyOf), BooleanClause.Occur.FILTER);
    }
    if (query.from() != null || query.to() != null) {
      all.add(NewestFirst.days(query.from(), query.to()), BooleanClause.Occur.FILTER);
    }
    // A question that only forbids, or asks nothing, would be met by nothing.
    all.add(new MatchAllDocsQuery(), BooleanClause.Occur.FILTER);
    return all;
  }

  static Query anyOf(AnyOf anyOf) {
    List<BytesRef> views =
        anyOf.terms().stream()
            .filter(term -> term.field() == IndexField.VIEW)
            .map(term -> new BytesRef(term.value()))
            .toList();
    Query any = anyOfTerms(anyOf);
    return views.size() < Math.max(2, anyOf.terms().size())
        ? any
        : new IndexOrDocValuesQuery(
            any, SortedSetDocValuesField.newSlowSetQuery(IndexField.VIEW.fieldName(), views));
  }

  private static Query anyOfTerms(AnyOf anyOf) {
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
}
