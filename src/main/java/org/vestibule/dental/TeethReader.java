package org.vestibule.dental;

import java.util.ArrayList;
import java.util.List;
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
    Notation fallback = tokens.named().orElse(siteDefault);
    List<TeethItem> items = new ArrayList<>();
    for (List<String> words : tokens.items()) {
      Outcome<TeethItem> item = new TeethItemReader(words, fallback).read();
      if (!(item instanceof Outcome.Done<TeethItem> done)) {
        return ((Outcome.Refused<TeethItem>) item).as();
      }
      items.add(done.value());
    }
    return oneNotation(items, tokens.named()).then(same -> together(same));
  }

  private static Outcome<List<TeethItem>> oneNotation(
      List<TeethItem> items, Optional<Notation> named) {
    Optional<Notation> notation = named;
    String first = named.map(Notation::words).orElse("");
    for (TeethItem item : items) {
      for (ToothMention mention : item.mentions()) {
        if (mention.notation().isEmpty()) {
          continue;
        }
        Notation here = mention.notation().get();
        if (notation.isPresent() && notation.get() != here) {
          return Outcome.refused(
              "notations are mixed: " + first + ", but " + reading(mention),
              "write all teeth in one notation");
        }
        first = notation.isPresent() ? first : reading(mention);
        notation = Optional.of(here);
      }
    }
    return Outcome.done(items);
  }

  private static String reading(ToothMention mention) {
    return "\""
        + mention.said()
        + "\" is "
        + mention.tooth().wordsAndNumber()
        + mention.notation().map(notation -> " in " + notation.words()).orElse("");
  }

  private static Outcome<Teeth> together(List<TeethItem> items) {
    boolean occupantsNamed = items.stream().anyMatch(item -> item.occupant().isPresent());
    List<ToothPosition> positions = new ArrayList<>();
    List<Area> areas = new ArrayList<>();
    for (TeethItem item : items) {
      areas.addAll(item.areas());
      if (occupantsNamed && item.occupant().isEmpty() && !item.teeth().isEmpty()) {
        return Outcome.refused(
            "it is not clear whether "
                + item.teeth().get(0).wordsAndNumber()
                + " is a tooth too or what another position is said to be",
            "say it at each position, such as \"implant 36, tooth 37\"");
      }
      Occupant occupant = item.occupant().orElse(Occupant.TOOTH);
      for (Tooth tooth : item.teeth()) {
        ToothPosition position = new ToothPosition(tooth, occupant);
        for (ToothPosition other : positions) {
          if (other.tooth() == tooth && other.occupant() != occupant) {
            return Outcome.refused(
                "the text names "
                    + other.words()
                    + " and also "
                    + position.words()
                    + ", which can't both be",
                "keep the one that is true");
          }
        }
        positions.add(position);
      }
    }
    return Outcome.done(new Teeth(positions, areas));
  }
}
