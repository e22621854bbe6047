package org.vestibule.search;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dental.Stage;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.store.index.AnyOf;
import org.vestibule.store.index.FoldedWords;
import org.vestibule.store.index.IndexField;

/** Adds what is asked for by name to a question's parts. */
final class OptionParts {

  private static final Map<String, String> STATES =
      Map.of("filed", "filed", "waiting", "not filed", "not filed", "not filed");

  private final ViewCatalogue views;
  private final TeethReader teeth;
  private final Parts parts;

  OptionParts(ViewCatalogue views, TeethReader teeth, Parts parts) {
    this.views = views;
    this.teeth = teeth;
    this.parts = parts;
  }

  Outcome<Parts> read(QuestionOptions options) {
    String patient = options.patient();
    if (patient != null) {
      String number = patient.strip().toLowerCase(Locale.ROOT);
      if (number.isEmpty()) {
        return Outcome.refused("the patient number is blank", "say it, or leave the option out");
      }
      parts.option(Part.of(IndexField.PATIENT, "patient number \"" + number + "\"", number));
    }
    return words(IndexField.REFERRER, "referred by", options.referrer())
        .then(p -> words(IndexField.TEXT, "treatment or note", options.text()))
        .then(p -> tooth(options.tooth()))
        .then(p -> view(options.view()))
        .then(p -> stage(options.stage()))
        .then(p -> state(options.state()))
        .then(p -> days(options.from(), options.to()));
  }

  private Outcome<Parts> words(IndexField field, String label, @Nullable String text) {
    if (text == null) {
      return Outcome.done(parts);
    }
    if (FoldedWords.of(text).isEmpty()) {
      return Outcome.refused(
          "the words for \"" + label + "\" hold no letter and no digit", "say at least one word");
    }
    for (String word : FoldedWords.of(text)) {
      AnyOf spellings = AnyOf.of(field, FoldedWords.spellings(word));
      parts.option(new Part(field, spellings, label + " \"" + word + "\""));
    }
    return Outcome.done(parts);
  }

  private Outcome<Parts> tooth(@Nullable String text) {
    if (text == null) {
      return Outcome.done(parts);
    }
    Outcome<Teeth> read = teeth.read(text);
    if (read instanceof Done<Teeth> done) {
      return parts.say(done.value());
    }
    return ((Refused<Teeth>) read).as();
  }

  private Outcome<Parts> view(@Nullable String text) {
    return text == null
        ? Outcome.done(parts)
        : views
            .find(text)
            .map(view -> Part.of(IndexField.VIEW, "view " + view.name(), view.key()))
            .map(this::option);
  }

  private Outcome<Parts> stage(@Nullable String text) {
    return text == null
        ? Outcome.done(parts)
        : Stage.find(text)
            .map(stage -> Part.of(IndexField.STAGE, "stage " + stage.words(), stage.words()))
            .map(this::option);
  }

  private Outcome<Parts> state(@Nullable String text) {
    if (text == null) {
      return Outcome.done(parts);
    }
    String state = STATES.get(text.strip().toLowerCase(Locale.ROOT));
    if (state == null) {
      return Outcome.refused("\"" + text + "\" is not a state", "say filed or waiting");
    }
    String value = state.equals("filed") ? "filed" : "waiting";
    return Outcome.done(option(Part.of(IndexField.STATE, state, value)));
  }

  private Parts option(Part part) {
    parts.option(part);
    return parts;
  }

  private Outcome<Parts> days(@Nullable String from, @Nullable String to) {
    String wrong = from;
    try {
      LocalDate first = from == null ? null : LocalDate.parse(from.strip());
      wrong = to;
      LocalDate last = to == null ? null : LocalDate.parse(to.strip());
      return first == null && last == null ? Outcome.done(parts) : parts.days(first, last);
    } catch (DateTimeException e) {
      return Outcome.refused(
          "\"" + wrong + "\" is not a day of the calendar as written here",
          "write it as 2026-03-12");
    }
  }
}
