package org.vestibule.search;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.TeethReader;

/** The words of one question, taken phrase by phrase. */
final class QuestionWords {

  private static final int LONGEST_PHRASE = 12;
  private static final int LONGEST_NUMBER = 3;
  private static final Set<String> ARCHES = Set.of("upper", "lower", "maxillary", "mandibular");
  private static final Set<String> SIDES = Set.of("right", "left");
  private static final Set<String> CORNERS = Set.of("ur", "ul", "ll", "lr");

  private static final Pattern UP_TO_TWO_DIGITS = Pattern.compile("[0-9]{1,2}");
  private static final Pattern NUMBER = Pattern.compile("[0-9]{3,}");
  private static final Pattern LIKE_A_TOOTH = Pattern.compile(".*[0-9].*|\\p{IsLatin}");

  private final List<String> tokens;
  private final List<String> lower;
  private final PhraseReader phrases;
  private final TeethReader teeth;
  private final OwnWords own;
  private final DateWords dates;
  private final List<String> teethSaid = new ArrayList<>();

  QuestionWords(
      List<String> tokens, PhraseReader phrases, TeethReader teeth, OwnWords own, LocalDate today) {
    this.tokens = tokens;
    this.lower = tokens.stream().map(token -> token.toLowerCase(Locale.ROOT)).toList();
    this.phrases = phrases;
    this.teeth = teeth;
    this.own = own;
    this.dates = new DateWords(lower, today);
  }

  /** How many words the phrase at this place has, 0 if it means nothing; it joins the parts. */
  Outcome<Integer> take(int at, Parts parts) throws IOException {
    String word = tokens.get(at);
    if (Tokens.isSeparator(word)) {
      return Outcome.done(1);
    }
    if (word.equalsIgnoreCase("or")) {
      return parts.or();
    }
    if (!Tokens.again(word).isEmpty()) {
      return again(Tokens.again(word), parts.lastTeeth());
    }
    Optional<Outcome<DateWords.Taken>> days = dates.at(at);
    if (days.isPresent()) {
      return collision(word)
          .orElseGet(() -> days.get().then(d -> parts.days(d.from(), d.to()).map(p -> d.tokens())));
    }
    Optional<Outcome<OwnWords.Taken>> labelled = own.labelled(tokens, lower, at);
    if (labelled.isPresent()) {
      return labelled.get().then(found -> say(found.parts(), found.tokens(), parts));
    }
    if (word.equals("a") && teeth.read(word) instanceof Done<Teeth>) {
      return Outcome.refused(
          "\"a\" could be tooth A or a word without meaning",
          "write #A for the tooth, or leave it out");
    }
    return phrase(at, parts);
  }

  /** A month or year that is also a name or a number in the record. */
  private Optional<Outcome<Integer>> collision(String word) throws IOException {
    boolean known =
        SpanWords.isYear(word)
            ? !own.anyNumber(word).isEmpty()
            : SpanWords.isMonth(word.toLowerCase(Locale.ROOT)) && !own.name(word).isEmpty();
    return known
        ? Optional.of(
            Outcome.refused(
                "\"" + word + "\" could say when it was taken, or stand in the record",
                "say \"in " + word + "\" for the time, or \"patient " + word + "\""))
        : Optional.empty();
  }

  /** Answers say teeth in words and again as numbers: both have to agree. */
  private Outcome<Integer> again(String numbers, Teeth said) {
    boolean agree =
        teeth.read("FDI " + numbers) instanceof Done<Teeth> read
            && read.value().teeth().equals(said.teeth());
    return agree
        ? Outcome.done(1)
        : Outcome.refused(
            "(" + numbers + ") does not say the teeth before it again", "leave out what is wrong");
  }

  private Outcome<Integer> phrase(int at, Parts parts) throws IOException {
    int most = Math.min(LONGEST_PHRASE, tokens.size() - at);
    for (int count = most; count > 0; count--) {
      Optional<Part> view = phrases.viewByName(tokens.subList(at, at + count));
      if (view.isPresent()) {
        return say(List.of(view.get()), count, parts);
      }
    }
    if (FillerWords.contains(tokens.get(at))) {
      return Outcome.done(1);
    }
    int reach = 1;
    while (reach < most && !Tokens.parts(tokens.get(at + reach))) {
      reach++;
    }
    Optional<Outcome<Integer>> cornered = cornered(at, reach, parts);
    if (cornered.isPresent()) {
      return cornered.get();
    }
    for (int count = reach; count > 0; count--) {
      Optional<Outcome<Integer>> taken = taken(at, count, parts);
      if (taken.isPresent()) {
        return taken.get();
      }
    }
    return single(at, parts);
  }

  private Optional<Outcome<Integer>> taken(int at, int count, Parts parts) throws IOException {
    List<String> words = tokens.subList(at, at + count);
    String last = words.get(count - 1);
    if (Tokens.isSeparator(last) || FillerWords.contains(last)) {
      return Optional.empty();
    }
    String phrase = Tokens.bare(String.join(" ", words));
    boolean letter = words.stream().anyMatch(QuestionWords::isLetterOfATooth);
    boolean teethFirst = letter || words.get(0).equalsIgnoreCase("teeth");
    Optional<Part> means = teethFirst ? Optional.empty() : phrases.read(phrase);
    if (means.isEmpty()
        && TeethWords.mayName(words)
        && teeth.read(phrase) instanceof Done<Teeth> done) {
      return Optional.of(teeth(phrase, done.value(), parts).map(p -> count));
    }
    means = teethFirst && !letter ? phrases.read(phrase) : means;
    if (means.isPresent()) {
      return Optional.of(say(List.of(means.get()), count, parts));
    }
    List<Part> number = count > LONGEST_NUMBER ? List.of() : own.anyNumber(phrase);
    return number.isEmpty() ? Optional.empty() : Optional.of(say(number, count, parts));
  }

  /** A quadrant and a number that contradict one another are never read as two things. */
  private Optional<Outcome<Integer>> cornered(int at, int reach, Parts parts) {
    List<String> words = lower.subList(at, at + reach);
    int corner = CORNERS.contains(words.get(0)) ? 1 : reach > 1 && isCorner(words) ? 2 : 0;
    if (corner == 0 || corner >= reach || !UP_TO_TWO_DIGITS.matcher(words.get(corner)).matches()) {
      return Optional.empty();
    }
    String numbered = String.join(" ", words.subList(0, corner + 1));
    if (!(teeth.read(numbered) instanceof Refused<Teeth> refused)) {
      return Optional.empty();
    }
    String quadrant = String.join(" ", words.subList(0, corner)) + " quadrant";
    boolean agree =
        teeth.read(words.get(corner)) instanceof Done<Teeth> alone
            && teeth.read(quadrant) instanceof Done<Teeth> area
            && area.value().areas().get(0).teeth().containsAll(alone.value().teeth());
    return Optional.of(
        agree
            ? teeth
                .read(words.get(corner))
                .then(named -> teeth(words.get(corner), named, parts))
                .map(p -> corner + 1)
            : refused.as());
  }

  /** Teeth said so far and now, all in one notation: "16" and "#16" mean different teeth. */
  private Outcome<Parts> teeth(String phrase, Teeth named, Parts parts) {
    teethSaid.add(phrase);
    return teeth.inOneNotation(teethSaid).then(all -> parts.say(named));
  }

  /** A to T, by which deciduous teeth are called. */
  private static boolean isLetterOfATooth(String word) {
    return word.length() == 1 && "ABCDEFGHIJKLMNOPQRSTabcdefghijklmnopqrst".contains(word);
  }

  private static boolean isCorner(List<String> words) {
    return (ARCHES.contains(words.get(0)) && SIDES.contains(words.get(1)))
        || (SIDES.contains(words.get(0)) && ARCHES.contains(words.get(1)));
  }

  /** A word that is no phrase: one of the record, or the reason why it is no tooth. */
  private Outcome<Integer> single(int at, Parts parts) throws IOException {
    String word = Tokens.bare(tokens.get(at));
    List<Part> known = own.anyWord(word);
    if (!known.isEmpty()) {
      return say(known, 1, parts);
    }
    if (TeethWords.isType(word)) {
      return Outcome.refused(
          "\"" + word + "\" does not say which tooth",
          "name the quadrant too, such as \"upper right first molar\"");
    }
    if (NUMBER.matcher(word).matches()) {
      return Outcome.refused(
          "\"" + word + "\" is no tooth, and no number of a patient or visit that is known here",
          "write teeth as 16, UR6 or #3, and numbers as they stand in the list of visits");
    }
    boolean tooth = LIKE_A_TOOTH.matcher(word).matches() && DateWords.wrong(word).isEmpty();
    return tooth && teeth.read(word) instanceof Refused<Teeth> refused
        ? refused.as()
        : Outcome.done(0);
  }

  private static Outcome<Integer> say(List<Part> said, int tokens, Parts parts) {
    Outcome<Parts> all = Outcome.done(parts);
    for (Part part : said) {
      all = all.then(p -> p.say(part));
    }
    return all.map(p -> tokens);
  }
}
