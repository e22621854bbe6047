package org.vestibule.search;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.vestibule.dental.Area;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.Tooth;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.store.index.AnyOf;
import org.vestibule.store.index.IndexField;
import org.vestibule.store.index.IndexTerm;
import org.vestibule.store.index.PhotoIndex;

/** The parts of a question as they are understood. */
final class Parts {

  /** Fields of the practice's own words, by which names and treatments are known. */
  static final List<IndexField> OWN_WORDS =
      List.of(
          IndexField.NAME,
          IndexField.REFERRER,
          IndexField.DENTIST,
          IndexField.TEXT,
          IndexField.DEVICE);

  private static final Map<String, AnyOf> FIXED =
      Map.ofEntries(
          Map.entry("mirror", AnyOf.of(IndexField.MIRROR, "as-shot", "corrected")),
          Map.entry("direct", AnyOf.of(IndexField.MIRROR, "none")),
          Map.entry("filed", AnyOf.of(IndexField.STATE, "filed")),
          Map.entry("waiting", AnyOf.of(IndexField.STATE, "waiting")),
          Map.entry("not filed", AnyOf.of(IndexField.STATE, "waiting")),
          Map.entry("implant", AnyOf.of(IndexField.OCCUPANT, "implant")),
          Map.entry("pontic", AnyOf.of(IndexField.OCCUPANT, "pontic")),
          Map.entry("gap", AnyOf.of(IndexField.OCCUPANT, "gap")),
          Map.entry(
              "contraster",
              AnyOf.of(
                  IndexField.ACCESSORY,
                  "contraster-occlusal",
                  "contraster-anterior",
                  "contraster-cheek")),
          Map.entry(
              "retractor",
              AnyOf.of(IndexField.ACCESSORY, "retractor-double", "retractor-c", "retractor-oval")),
          Map.entry("ruler", AnyOf.of(IndexField.ACCESSORY, "ruler")),
          Map.entry("shade tab", AnyOf.of(IndexField.ACCESSORY, "shade-tab")));

  private final List<AnyOf> must = new ArrayList<>();
  private final List<String> understood = new ArrayList<>();
  private Teeth teeth = Teeth.NONE;
  private @Nullable LocalDate from;
  private @Nullable LocalDate to;

  static Set<String> fixedWords() {
    return FIXED.keySet();
  }

  boolean isEmpty() {
    return must.isEmpty() && teeth.isEmpty() && from == null && to == null;
  }

  void must(String words, IndexField field, String value) {
    must.add(AnyOf.of(field, value));
    understood.add(words);
  }

  boolean fixedWord(String plain) {
    AnyOf means = FIXED.get(plain);
    if (means == null) {
      return false;
    }
    must.add(means);
    understood.add(plain);
    return true;
  }

  /** A word of names or texts in the record; whichever field holds it. */
  boolean ownWord(String word, PhotoIndex index) throws IOException {
    List<IndexTerm> terms = new ArrayList<>();
    for (IndexField field : OWN_WORDS) {
      IndexTerm term = new IndexTerm(field, word);
      if (index.has(term)) {
        terms.add(term);
      }
    }
    if (terms.isEmpty()) {
      return false;
    }
    must.add(new AnyOf(terms));
    understood.add("\"" + word + "\" in a name, treatment or note");
    return true;
  }

  void views(String words, List<String> keys, ViewCatalogue views) {
    must.add(AnyOf.of(IndexField.VIEW, keys));
    understood.add(
        keys.size() == 1
            ? "view " + views.byKey(keys.get(0)).orElseThrow().name()
            : "any of " + keys.size() + " views called \"" + words + "\"");
  }

  void teeth(Teeth named) {
    teeth =
        new Teeth(
            Stream.concat(teeth.positions().stream(), named.positions().stream()).toList(),
            Stream.concat(teeth.areas().stream(), named.areas().stream()).toList());
    understood.add(named.words());
  }

  void days(DateWords.Taken taken) {
    days(taken.from(), taken.to());
    understood.add(taken.words());
  }

  void days(@Nullable LocalDate first, @Nullable LocalDate last) {
    from = first == null ? from : first;
    to = last == null ? to : last;
  }

  Question question() {
    List<AnyOf> tiers = new ArrayList<>();
    List<String> words = new ArrayList<>();
    List<String> numbers =
        Stream.concat(
                teeth.teeth().stream(), teeth.areas().stream().flatMap(a -> a.teeth().stream()))
            .map(Tooth::iso)
            .distinct()
            .map(iso -> Integer.toString(iso))
            .toList();
    if (!teeth.isEmpty()) {
      tiers.add(named(numbers));
      words.add("named");
      tier(tiers, words, IndexField.SEGMENT, numbers, "usually in frame (segment)");
      tier(tiers, words, IndexField.QUADRANT, numbers, "usually in frame (one side)");
      tier(tiers, words, IndexField.ARCH, numbers, "usually in frame (arch)");
      tier(tiers, words, IndexField.MOUTH, numbers, "usually in frame (mouth)");
    }
    return new Question(must, tiers, words, from, to, understood);
  }

  private AnyOf named(List<String> numbers) {
    List<IndexTerm> terms = new ArrayList<>();
    numbers.forEach(number -> terms.add(new IndexTerm(IndexField.TOOTH, number)));
    teeth.areas().stream()
        .map(Area::iso)
        .forEach(area -> terms.add(new IndexTerm(IndexField.AREA, area)));
    return new AnyOf(terms);
  }

  private static void tier(
      List<AnyOf> tiers,
      List<String> words,
      IndexField field,
      List<String> numbers,
      String meaning) {
    tiers.add(AnyOf.of(field, numbers));
    words.add(meaning);
  }
}
