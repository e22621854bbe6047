package org.vestibule.store.index;

import java.util.List;

/** Alternatives, one of which is enough. */
public record AnyOf(List<IndexTerm> terms) {

  public AnyOf {
    terms = List.copyOf(terms);
    if (terms.isEmpty()) {
      throw new IllegalArgumentException("of no alternatives none can be met");
    }
  }

  public static AnyOf of(IndexField field, String... values) {
    return of(field, List.of(values));
  }

  public static AnyOf of(IndexField field, List<String> values) {
    return new AnyOf(values.stream().map(value -> new IndexTerm(field, value)).toList());
  }
}
