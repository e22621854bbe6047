package org.vestibule.search;

import java.time.DateTimeException;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dental.Stage;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.store.index.FoldedWords;
import org.vestibule.store.index.IndexField;

/** Adds what is asked for by name to a question's parts. */
final class OptionParts {

  private static final Set<String> STATES = Set.of("filed", "waiting");

  private final ViewCatalogue views;
  private final TeethReader teeth;
  private final Parts parts;

  OptionParts(ViewCatalogue views, TeethReader teeth, Parts parts) {
    this.views = views;
    this.teeth = teeth;
    this.parts = parts;
  }

  Outcome<Parts> read(QuestionOptions options) {
    try {
      parts.days(QuestionReader.day(options.from()), QuestionReader.day(options.to()));
    } catch (DateTimeException e) {
      return Outcome.refused("a date is not written as expected", "write it as 2026-03-12");
    }
    if (options.patient() != null) {
      must("patient number", IndexField.PATIENT, options.patient());
    }
    words(IndexField.REFERRER, "referred by", options.referrer());
    words(IndexField.TEXT, "treatment or note", options.text());
    return tooth(options.tooth())
        .then(p -> view(options.view()))
        .then(p -> stage(options.stage()))
        .then(p -> state(options.state()));
  }

  private void must(String words, IndexField field, String value) {
    parts.must(words, field, value.strip().toLowerCase(Locale.ROOT));
  }

  private void words(IndexField field, String words, @Nullable String text) {
    if (text != null) {
      FoldedWords.of(text).forEach(word -> parts.must(words + " \"" + word + "\"", field, word));
    }
  }

  private Outcome<Parts> tooth(@Nullable String text) {
    if (text == null) {
      return Outcome.done(parts);
    }
    Outcome<Teeth> read = teeth.read(text);
    if (read instanceof Done<Teeth> done) {
      parts.teeth(done.value());
      return Outcome.done(parts);
    }
    return ((Refused<Teeth>) read).as();
  }

  private Outcome<Parts> view(@Nullable String text) {
    if (text == null) {
      return Outcome.done(parts);
    }
    return views
        .find(text)
        .map(
            (View view) -> {
              parts.must("view " + view.name(), IndexField.VIEW, view.key());
              return parts;
            });
  }

  private Outcome<Parts> stage(@Nullable String text) {
    if (text == null) {
      return Outcome.done(parts);
    }
    return Stage.find(text)
        .map(
            stage -> {
              parts.must("stage " + stage.words(), IndexField.STAGE, stage.words());
              return parts;
            });
  }

  private Outcome<Parts> state(@Nullable String text) {
    if (text == null) {
      return Outcome.done(parts);
    }
    if (!STATES.contains(text)) {
      return Outcome.refused("\"" + text + "\" is not a state", "say filed or waiting");
    }
    parts.must(text, IndexField.STATE, text);
    return Outcome.done(parts);
  }
}
