package org.vestibule.words;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.vestibule.base.Outcome.Done;
import org.vestibule.dental.Arch;
import org.vestibule.dental.Direction;
import org.vestibule.dental.Notation;
import org.vestibule.dental.Occupant;
import org.vestibule.dental.Side;
import org.vestibule.dental.Stage;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.Tooth;
import org.vestibule.dental.ToothPosition;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;

/** The trade's words in one language: teeth, views, stages, sides. */
public final class TradeWords {

  private final Words words;
  private final ViewCatalogue views;

  public TradeWords(Words words, ViewCatalogue views) {
    this.words = words;
    this.views = views;
  }

  /** A view's name; one of the practice's own is called as the practice calls it. */
  public String view(View view) {
    return words.find("view-" + view.key()).orElse(view.name());
  }

  /** The name of the view with this key; empty for no key. */
  public String view(String key) {
    return views.byKey(key).map(this::view).orElse(key);
  }

  /** The view that the catalogue calls so; the name itself if there is none. */
  public String viewNamed(String name) {
    return views.all().stream()
        .filter(view -> view.name().equals(name))
        .map((View view) -> view(view))
        .findFirst()
        .orElse(name);
  }

  public String stage(String word) {
    return !word.isEmpty() && Stage.find(word) instanceof Done<Stage> stage
        ? words.say("stage-" + stage.value().words())
        : word;
  }

  /** A quadrant, such as {@code upper right}. */
  public String place(Arch arch, Side side) {
    return words.say("place-" + arch.words() + "-" + side.words());
  }

  /** Such as {@code upper right first molar}. */
  public String tooth(Tooth tooth) {
    String type = words.say("tooth-" + tooth.type().replace(' ', '-'));
    String where = place(tooth.arch(), tooth.side());
    return words.say(tooth.deciduous() ? "tooth-deciduous" : "tooth-permanent", where, type);
  }

  /** The tooth that is called so in English, with its number by ISO 3950; empty if none is. */
  public Optional<String> toothNamed(String english) {
    return Tooth.all().stream()
        .filter(tooth -> tooth.wordsAndNumber().equals(english))
        .map(tooth -> tooth(tooth) + " (" + tooth.iso() + ")")
        .findFirst();
  }

  /** Teeth in words, each with its number. */
  public String teeth(List<Integer> numbers, Notation notation) {
    return numbers.stream()
        .map(Tooth::ofIso)
        .filter(Done.class::isInstance)
        .map(found -> found.orThrow())
        .map(tooth -> tooth(tooth) + " (" + number(tooth, notation) + ")")
        .collect(Collectors.joining(", "));
  }

  public static String number(Tooth tooth, Notation notation) {
    return switch (notation) {
      case ISO_3950 -> String.valueOf(tooth.iso());
      case UNIVERSAL -> "#" + tooth.universal();
      case PALMER -> tooth.palmer();
    };
  }

  /** Teeth and areas with ISO 3950 numbers, as {@link Teeth#words()} says them in English. */
  public String teeth(Teeth teeth) {
    return Stream.concat(
            teeth.areas().stream().map(area -> words.say("area-" + area.words().replace(' ', '-'))),
            teeth.runs().stream().map(this::run))
        .collect(Collectors.joining(", "));
  }

  private String run(List<ToothPosition> run) {
    Tooth from = run.get(0).tooth();
    Tooth to = run.get(run.size() - 1).tooth();
    Occupant occupant = run.get(0).occupant();
    String what = occupant == Occupant.TOOTH ? "" : words.say("occupant-" + occupant.words());
    if (run.size() == 1) {
      String tooth = tooth(from) + " (" + from.iso() + ")";
      return what.isEmpty() ? tooth : words.say("occupant-at", what, tooth);
    }
    return words.say(
        what.isEmpty() ? "teeth-run" : "positions-run",
        tooth(from),
        tooth(to),
        from.iso(),
        to.iso(),
        run.size(),
        what);
  }

  /** What lies at a margin, such as {@code patient's right}. */
  public String direction(Direction direction) {
    return words.say("direction-" + direction.name().toLowerCase(Locale.ROOT));
  }

  /**
   * A fact's label, translated if we know it; the one without is what the line before says in
   * codes.
   */
  public String label(String english) {
    String key =
        english.isEmpty() ? "coded-as" : english.toLowerCase(Locale.ROOT).replace(' ', '-');
    return words.find("fact-" + key).orElse(english);
  }
}
