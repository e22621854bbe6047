package org.vestibule.dental;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.vestibule.base.Outcome;

/**
 * Reads which teeth a text names. Unmarked numbers are read in the site's one default notation;
 * other notations are read where their marks leave no doubt ("#8", "UR6", "1.6", "6┘", words). What
 * is ambiguous, impossible or mixes notations is refused with the readings it could have.
 */
public final class TeethReader {

  private static final int LONGEST_TEXT = 500;

  private final Notation siteDefault;

  public TeethReader(Notation siteDefault) {
    this.siteDefault = siteDefault;
  }

  /** Reads a list such as {@code 13-23}, {@code 16, 17}, {@code implant 36} or {@code #8}. */
  public Outcome<Teeth> read(String text) {
    if (text.length() > LONGEST_TEXT) {
      return Outcome.refused(
          "the text about teeth has " + text.length() + " characters, more than " + LONGEST_TEXT,
          "name areas such as \"upper arch\", or ranges such as 13-23");
    }
    TeethTokens tokens = TeethTokens.of(text);
    if (tokens.items().isEmpty()) {
      return Outcome.refused(
          "no tooth is named", "write teeth as 16, UR6 or #3, or leave them out");
    }
    return items(tokens)
        .then(items -> new OneNotation().text(tokens.named(), items).map(one -> items))
        .then(TeethReader::together);
  }

  /**
   * Refuses texts that can be read one by one but not together, because they use different
   * notations. Texts that can't be read at all are passed over.
   */
  public Outcome<List<String>> inOneNotation(List<String> texts) {
    Outcome<OneNotation> one = Outcome.done(new OneNotation());
    for (String text : texts) {
      TeethTokens tokens = TeethTokens.of(text);
      if (items(tokens) instanceof Outcome.Done<List<TeethItem>> items) {
        one = one.then(before -> before.text(tokens.named(), items.value()));
      }
    }
    return one.map(all -> texts);
  }

  private Outcome<List<TeethItem>> items(TeethTokens tokens) {
    Notation fallback = tokens.named().orElse(siteDefault);
    List<TeethItem> items = new ArrayList<>();
    for (List<String> words : tokens.items()) {
      Outcome<TeethItem> item = new TeethItemReader(words, fallback).read();
      if (!(item instanceof Outcome.Done<TeethItem> done)) {
        return ((Outcome.Refused<TeethItem>) item).as();
      }
      items.add(done.value());
    }
    return Outcome.done(items);
  }

  private static Outcome<Teeth> together(List<TeethItem> items) {
    boolean occupantsNamed = items.stream().anyMatch(item -> item.occupant().isPresent());
    List<ToothPosition> positions = new ArrayList<>();
    List<Area> areas = new ArrayList<>();
    for (TeethItem item : items) {
      areas.addAll(item.areas());
      if (occupantsNamed && item.occupant().isEmpty() && !item.teeth().isEmpty()) {
        return Outcome.refused(
            "it is not clear what stands at " + item.teeth().get(0).wordsAndNumber(),
            "say it at each position, such as \"implant 36, tooth 37\"");
      }
      for (Tooth tooth : item.teeth()) {
        positions.add(new ToothPosition(tooth, item.occupant().orElse(Occupant.TOOTH)));
      }
    }
    return contradiction(positions).orElseGet(() -> Outcome.done(new Teeth(positions, areas)));
  }

  private static Optional<Outcome<Teeth>> contradiction(List<ToothPosition> positions) {
    Map<Tooth, ToothPosition> seen = new HashMap<>();
    for (ToothPosition position : positions) {
      ToothPosition other = seen.putIfAbsent(position.tooth(), position);
      if (other != null && other.occupant() != position.occupant()) {
        return Optional.of(
            Outcome.refused(
                "the text names "
                    + other.words()
                    + " and also "
                    + position.words()
                    + ", which can't both be",
                "keep the one that is true"));
      }
    }
    return Optional.empty();
  }
}
