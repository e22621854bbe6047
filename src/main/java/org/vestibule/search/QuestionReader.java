package org.vestibule.search;

import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dental.NearestWords;
import org.vestibule.dental.Stage;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.store.index.IndexField;
import org.vestibule.store.index.PhotoIndex;

/**
 * Understands a question in a practitioner's words: teeth, views, stages, mirror, accessories,
 * dates, names and numbers in any order. The longest phrase that means something counts first; a
 * word that means nothing is refused with the nearest known ones, never dropped. How a question is
 * understood is said in words that ask the same again.
 */
public final class QuestionReader {

  private static final Set<IndexField> SUGGESTED =
      Set.of(IndexField.REFERRER, IndexField.DENTIST, IndexField.DEVICE);

  private static final String ASK_BY = "ask by tooth, view, stage, date, or a name in the record";

  private final ViewCatalogue views;
  private final PhraseReader phrases;
  private final TeethReader teeth;
  private final PhotoIndex index;
  private final LocalDate today;

  public QuestionReader(ViewCatalogue views, TeethReader teeth, PhotoIndex index, LocalDate today) {
    this.views = views;
    this.phrases = new PhraseReader(views);
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
    List<String> tokens = Tokens.of(words);
    QuestionWords said = new QuestionWords(tokens, phrases, teeth, new OwnWords(index), today);
    int at = 0;
    while (at < tokens.size()) {
      Outcome<Integer> taken = said.take(at, parts);
      if (!(taken instanceof Done<Integer> count)) {
        return ((Refused<Integer>) taken).as();
      }
      if (count.value() == 0) {
        return unknown(Tokens.bare(tokens.get(at)));
      }
      at += count.value();
    }
    if (parts.isEmpty()) {
      return Outcome.refused(
          "the question is empty",
          "say what is looked for, such as \"16 occlusal\"; put a # in quotes, because the shell"
              + " takes a bare #3 for a comment");
    }
    return parts.question();
  }

  /** Names of patients and words of notes are never suggested: who asks may not know them. */
  private Outcome<Question> unknown(String word) throws IOException {
    Optional<Outcome<Question>> date = DateWords.wrong(word);
    if (date.isPresent()) {
      return date.get();
    }
    if (views.vocabulary().contains(word.toLowerCase(Locale.ROOT))) {
      return Outcome.refused("\"" + word + "\" alone says too little", ASK_BY);
    }
    Set<String> all = new TreeSet<>(views.vocabulary());
    all.addAll(Stage.allWords());
    FixedWords.all().stream().filter(fixed -> !fixed.contains(" ")).forEach(all::add);
    all.addAll(SpanWords.vocabulary());
    all.removeAll(FillerWords.all());
    for (IndexField field : SUGGESTED) {
      all.addAll(index.values(field));
    }
    return Outcome.refused(
        "\"" + word + "\" is not a word that is known here",
        new NearestWords(all).suggestion(word, ASK_BY));
  }
}
