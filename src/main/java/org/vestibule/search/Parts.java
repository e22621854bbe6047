package org.vestibule.search;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.dental.Teeth;
import org.vestibule.store.index.IndexField;

/**
 * The parts of a question as they are understood. Every part has to be met; two stages, mirror
 * states or views that can't both be true of one photograph are alternatives.
 */
final class Parts {

  private final List<Part> options = new ArrayList<>();
  private final List<Part> said = new ArrayList<>();
  private final AskedTeeth teeth = new AskedTeeth();
  private @Nullable LocalDate from;
  private @Nullable LocalDate to;
  private Optional<IndexField> last = Optional.empty();
  private boolean or;

  boolean isEmpty() {
    return options.isEmpty() && said.isEmpty() && teeth.isEmpty() && from == null && to == null;
  }

  void option(Part part) {
    options.add(part);
  }

  /** The next part is an alternative to the one before it. */
  Outcome<Integer> or() {
    or = true;
    return last.isPresent()
        ? Outcome.done(1)
        : Outcome.refused(
            "\"or\" stands here without two teeth, views, stages or names on both sides",
            "ask two questions, or leave it out");
  }

  /** What was said; refused if it is said to be an alternative to another kind of thing. */
  Outcome<Parts> say(Part part) {
    if (or && !last.equals(Optional.of(part.field()))) {
      return mixed(part.words());
    }
    if (or) {
      Part before = said.remove(said.size() - 1);
      said.add(before.or(part));
    } else {
      said.add(part);
    }
    return follows(part.field());
  }

  /** Teeth, any of which may be meant. */
  Outcome<Parts> say(Teeth named) {
    if (or && !last.equals(Optional.of(IndexField.TOOTH))) {
      return mixed(named.words());
    }
    teeth.add(named);
    return follows(IndexField.TOOTH);
  }

  private Outcome<Parts> follows(IndexField field) {
    last = Optional.of(field);
    or = false;
    return Outcome.done(this);
  }

  private static Outcome<Parts> mixed(String words) {
    return Outcome.refused(
        "\"or\" joins two different kinds of things, the second being " + words,
        "ask two questions, or leave it out");
  }

  /** Days that hold besides those already said. */
  Outcome<Parts> days(@Nullable LocalDate first, @Nullable LocalDate end) {
    if (or) {
      return mixed("days");
    }
    from = from == null || (first != null && first.isAfter(from)) ? first : from;
    to = to == null || (end != null && end.isBefore(to)) ? end : to;
    last = Optional.empty();
    return Outcome.done(this);
  }

  /** The teeth that were said last. */
  Teeth lastTeeth() {
    return last.equals(Optional.of(IndexField.TOOTH)) ? teeth.last() : Teeth.NONE;
  }

  Outcome<Question> question() {
    if (or) {
      return Outcome.refused("nothing stands after \"or\"", "say what else may be meant");
    }
    if (from != null && to != null && from.isAfter(to)) {
      return Outcome.refused(
          "no day is both since " + from + " and until " + to,
          "say one span of days, with its years, such as 2025-11 to 2026-02");
    }
    List<Part> all = new ArrayList<>(options);
    for (Part part : alternatives()) {
      for (Part option : options) {
        if (option.excludes(part)) {
          return Outcome.refused(
              "no photograph is both " + option.words() + " and " + part.words(),
              "keep the option or the word");
        }
      }
      all.add(part);
    }
    return Outcome.done(question(all));
  }

  private Question question(List<Part> all) {
    List<String> understood = new ArrayList<>(teeth.words());
    all.forEach(part -> understood.add(part.words()));
    if (from != null || to != null) {
      understood.add(new DateWords.Taken(from, to, 0).words());
    }
    return new Question(
        all.stream().map(Part::means).toList(),
        teeth.tiers(),
        teeth.tierWords(),
        from,
        to,
        understood);
  }

  /** What was said, with what excludes one another as alternatives. */
  private List<Part> alternatives() {
    Map<IndexField, Part> either = new LinkedHashMap<>();
    List<Part> every = new ArrayList<>();
    for (Part part : said) {
      boolean excluded = said.stream().anyMatch(part::excludes);
      if (excluded) {
        either.merge(part.field(), part, Part::or);
      } else {
        every.add(part);
      }
    }
    every.addAll(either.values());
    return every;
  }
}
