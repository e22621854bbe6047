package org.vestibule.dental;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.vestibule.base.Outcome;

/**
 * Reads one item of a list of teeth, such as {@code 13-23}, {@code 14 15} or {@code implant 36}.
 */
final class TeethItemReader {

  private static final int LONGEST_AREA_WORDS = 3;

  private final List<String> words;
  private final Notation fallback;
  private final List<Tooth> teeth = new ArrayList<>();
  private final List<Area> areas = new ArrayList<>();
  private final List<TeethItem.Mark> marks = new ArrayList<>();
  private final List<Occupant> occupants = new ArrayList<>();
  private int at;
  private int groups;

  TeethItemReader(List<String> words, Notation fallback) {
    this.words = words;
    this.fallback = fallback;
  }

  Outcome<TeethItem> read() {
    while (at < words.size()) {
      String word = words.get(at);
      Optional<Occupant> occupant = Occupant.of(word);
      if (occupant.isPresent()) {
        occupants.add(occupant.get());
        at++;
      } else if (word.equals("teeth")) {
        at++;
      } else if (!area()) {
        Outcome<Integer> next = toothOrRange();
        if (next instanceof Outcome.Refused<Integer> refused) {
          return refused.as();
        }
        at = next.orThrow();
      }
    }
    return finished();
  }

  private Outcome<TeethItem> finished() {
    if (teeth.isEmpty() && areas.isEmpty()) {
      return Outcome.refused(
          "\"" + String.join(" ", words) + "\" names no tooth",
          "add the tooth, such as \"implant 36\"");
    }
    if (occupants.size() > 1 || (occupants.size() == 1 && (groups > 1 || !areas.isEmpty()))) {
      return Outcome.refused(
          "in \""
              + String.join(" ", words)
              + "\" it is not clear what \""
              + occupants.get(0).words()
              + "\" belongs to",
          "separate the positions by commas and say it at each, such as \"implant 36, tooth 37\"");
    }
    return Outcome.done(
        new TeethItem(
            List.copyOf(teeth),
            List.copyOf(areas),
            List.copyOf(marks),
            occupants.stream().findFirst()));
  }

  private boolean area() {
    for (int length = Math.min(LONGEST_AREA_WORDS, words.size() - at); length > 0; length--) {
      Optional<Area> area = Area.bySaying(String.join(" ", words.subList(at, at + length)));
      if (area.isPresent()) {
        areas.add(area.get());
        at += length;
        return true;
      }
    }
    if (fallback == Notation.ISO_3950) {
      Optional<Area> coded = Area.byIso(words.get(at));
      coded.ifPresent(this::codedArea);
      return coded.isPresent();
    }
    return false;
  }

  private void codedArea(Area area) {
    areas.add(area);
    marks.add(new TeethItem.Mark(words.get(at), area.words(), Notation.ISO_3950));
    at++;
  }

  private void mark(ToothMention mention) {
    mention
        .notation()
        .ifPresent(
            notation ->
                marks.add(
                    new TeethItem.Mark(
                        mention.said(), mention.tooth().wordsAndNumber(), notation)));
  }

  private Outcome<Integer> toothOrRange() {
    if (words.get(at).equals("-")) {
      return Outcome.refused(
          "a range in \"" + String.join(" ", words) + "\" has no tooth at one end",
          "write both ends, such as 13-23");
    }
    return ToothMention.read(words, at, fallback)
        .then(
            from -> {
              boolean range = from.next() < words.size() && words.get(from.next()).equals("-");
              return range ? range(from) : alone(from);
            });
  }

  private Outcome<Integer> alone(ToothMention mention) {
    teeth.add(mention.tooth());
    mark(mention);
    groups++;
    return Outcome.done(mention.next());
  }

  private Outcome<Integer> range(ToothMention from) {
    int second = from.next() + 1;
    if (second == words.size()) {
      return Outcome.refused(
          "a range in \"" + String.join(" ", words) + "\" has no tooth at one end",
          "write both ends, such as 13-23");
    }
    return ToothMention.read(words, second, fallback)
        .then(
            to ->
                ArchRange.between(from.tooth(), to.tooth())
                    .map(
                        run -> {
                          teeth.addAll(run);
                          mark(from);
                          mark(to);
                          groups++;
                          return to.next();
                        }));
  }
}
