package org.vestibule.search;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dental.NearestWords;
import org.vestibule.dental.Stage;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.store.index.FoldedWords;
import org.vestibule.store.index.IndexField;
import org.vestibule.store.index.PhotoIndex;

/**
 * Understands a question in a practitioner's words: teeth, views, stages, mirror, accessories,
 * dates, names and numbers in any order. The longest phrase that means something counts first; a
 * word that means nothing is refused with the nearest known ones, never dropped.
 */
public final class QuestionReader {

  private static final int LONGEST_PHRASE = 6;
  private static final Set<String> FILLERS = Set.of("the", "of", "and", "with", "photos", "photo");

  private final ViewCatalogue views;
  private final TeethReader teeth;
  private final PhotoIndex index;
  private final LocalDate today;

  public QuestionReader(ViewCatalogue views, TeethReader teeth, PhotoIndex index, LocalDate today) {
    this.views = views;
    this.teeth = teeth;
    this.index = index;
    this.today = today;
  }

  /** The question that words and options make together. */
  public Outcome<Question> read(String words, QuestionOptions options) throws IOException {
    Parts parts = new Parts();
    Outcome<Parts> named = new OptionParts(views, teeth, parts).read(options);
    if (named instanceof Refused<Parts> refused) {
      return refused.as();
    }
    List<String> tokens =
        new ArrayList<>(List.of(words.strip().replace(",", " , ").split("\\s+", -1)));
    tokens.removeIf(token -> token.isEmpty() || token.equals(","));
    int at = 0;
    while (at < tokens.size()) {
      Outcome<Integer> taken = take(tokens, at, parts);
      if (!(taken instanceof Done<Integer> count)) {
        return ((Refused<Integer>) taken).as();
      }
      at += count.value();
    }
    if (parts.isEmpty()) {
      return Outcome.refused(
          "the question is empty",
          "say what is looked for, such as \"16 occlusal\"; put a # in quotes, because the shell"
              + " takes a bare #3 for a comment");
    }
    return Outcome.done(parts.question());
  }

  /** How many tokens the phrase at this place has; it is added to the parts. */
  private Outcome<Integer> take(List<String> tokens, int at, Parts parts) throws IOException {
    Optional<DateWords.Taken> dates = DateWords.at(tokens, at, today);
    if (dates.isPresent()) {
      parts.days(dates.get());
      return Outcome.done(dates.get().tokens());
    }
    Refused<?> tooth = null;
    for (int count = Math.min(LONGEST_PHRASE, tokens.size() - at); count > 0; count--) {
      String phrase = String.join(" ", tokens.subList(at, at + count));
      if (means(phrase, parts)) {
        return Outcome.done(count);
      }
      Outcome<Teeth> read = teeth.read(phrase);
      if (read instanceof Done<Teeth> done && !done.value().isEmpty()) {
        parts.teeth(done.value());
        return Outcome.done(count);
      }
      if (known(phrase.toLowerCase(Locale.ROOT), parts)) {
        return Outcome.done(count);
      }
      if (count == 1 && phrase.matches(".*\\d.*") && read instanceof Refused<?> refused) {
        tooth = refused;
      }
    }
    String word = tokens.get(at);
    if (FILLERS.contains(word.toLowerCase(Locale.ROOT))) {
      return Outcome.done(1);
    }
    return tooth != null ? Outcome.refused(tooth.reason(), tooth.advice()) : unknown(word);
  }

  private boolean means(String phrase, Parts parts) {
    String plain = phrase.toLowerCase(Locale.ROOT);
    if (parts.fixedWord(plain)) {
      return true;
    }
    if (Stage.find(plain) instanceof Done<Stage> stage) {
      parts.must("stage " + stage.value().words(), IndexField.STAGE, stage.value().words());
      return true;
    }
    List<String> named = views.allNaming(plain).stream().map(view -> view.key()).toList();
    if (!named.isEmpty()) {
      parts.views(plain, named, views);
      return true;
    }
    return false;
  }

  /** Words of the practice's own data: numbers, names, treatments. */
  private boolean known(String plain, Parts parts) throws IOException {
    for (IndexField exact : List.of(IndexField.PATIENT, IndexField.ACCESSION)) {
      if (index.values(exact).contains(plain)) {
        parts.must(exact == IndexField.PATIENT ? "patient number" : "accession", exact, plain);
        return true;
      }
    }
    List<String> words = FoldedWords.of(plain);
    if (words.size() != 1) {
      return false;
    }
    return parts.ownWord(words.get(0), index);
  }

  private Outcome<Integer> unknown(String word) throws IOException {
    Set<String> all = new TreeSet<>(views.vocabulary());
    all.addAll(Stage.allWords());
    all.addAll(Parts.fixedWords());
    for (IndexField field : Parts.OWN_WORDS) {
      all.addAll(index.values(field));
    }
    return Outcome.refused(
        "\"" + word + "\" is not a word that is known here",
        new NearestWords(all)
            .suggestion(word, "ask by tooth, view, stage, date, or a name in the record"));
  }

  static @Nullable LocalDate day(@Nullable String iso) {
    return iso == null ? null : LocalDate.parse(iso);
  }
}
