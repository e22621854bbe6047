package org.vestibule.search;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.vestibule.store.index.AnyOf;
import org.vestibule.store.index.IndexField;
import org.vestibule.store.index.IndexTerm;

/**
 * A part of a question that every answer has to meet.
 *
 * @param field what it is about; own words of the practice stand under {@link IndexField#TEXT}
 * @param means the alternatives, one of which is enough
 * @param words how it was understood, in words that can be asked again
 */
record Part(IndexField field, AnyOf means, String words) {

  /** Fields of which a photograph has one value: two values of one field can't both be meant. */
  private static final Set<IndexField> SINGLE =
      Set.of(IndexField.VIEW, IndexField.STAGE, IndexField.MIRROR, IndexField.STATE);

  static Part of(IndexField field, String words, String... values) {
    return new Part(field, AnyOf.of(field, values), words);
  }

  boolean isSingle() {
    return SINGLE.contains(field);
  }

  /** True if no photograph can meet both. */
  boolean excludes(Part other) {
    return isSingle() && field == other.field && common(other).isEmpty();
  }

  Set<IndexTerm> common(Part other) {
    Set<IndexTerm> common = new HashSet<>(means.terms());
    common.retainAll(other.means.terms());
    return common;
  }

  /** Either of the two. */
  Part or(Part other) {
    List<IndexTerm> terms = new ArrayList<>(means.terms());
    other.means.terms().stream().filter(term -> !terms.contains(term)).forEach(terms::add);
    return new Part(
        field, new AnyOf(terms), words.equals(other.words) ? words : words + " or " + other.words);
  }
}
