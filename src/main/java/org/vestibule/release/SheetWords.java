package org.vestibule.release;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.vestibule.dental.Direction;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.Tooth;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.words.Language;
import org.vestibule.words.TradeWords;
import org.vestibule.words.Words;

/** What a release's sheet says, in one language. */
public final class SheetWords {

  private static final Pattern DAY = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");
  private static final Pattern NUMBER = Pattern.compile("day (\\d+)");

  private final Language language;
  private final Words words;
  private final TradeWords trade;

  public SheetWords(Language language) {
    this.language = language;
    this.words = Words.trade(language).and(Words.read(SheetWords.class, "words/sheet", language));
    this.trade = new TradeWords(words, ViewCatalogue.standard());
  }

  Language language() {
    return language;
  }

  String say(String key, Object... values) {
    return words.say(key, values);
  }

  String photographs(long count) {
    return words.count("photographs", Math.toIntExact(count));
  }

  String purpose(Purpose purpose) {
    return words.find("purpose-" + purpose.key()).orElse(purpose.name());
  }

  /** A view that the catalogue calls so; one of the practice's own keeps its name. */
  String view(String name) {
    return trade.viewNamed(name);
  }

  String teeth(Teeth teeth) {
    return teeth.isEmpty() ? "" : trade.teeth(teeth);
  }

  String tooth(Tooth tooth) {
    return trade.tooth(tooth) + " (" + tooth.iso() + ")";
  }

  /** What lies at a margin, by its English words. */
  String side(String english) {
    return Arrays.stream(Direction.values())
        .filter(direction -> direction.words().equals(english))
        .map(trade::direction)
        .findFirst()
        .orElse(english);
  }

  String day(LocalDate day) {
    return DateTimeFormatter.ofPattern(words.say("day-pattern"), language.locale()).format(day);
  }

  /** A day, an interval or nothing, from how the record keeps it. */
  public String when(String kept) {
    if (DAY.matcher(kept).matches()) {
      return day(LocalDate.parse(kept));
    }
    Matcher number = NUMBER.matcher(kept);
    return number.matches() ? words.say("day-number", number.group(1)) : kept;
  }
}
