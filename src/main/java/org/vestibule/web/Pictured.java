package org.vestibule.web;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.vestibule.base.ContentHash;
import org.vestibule.dental.Edge;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.flow.Faces;
import org.vestibule.store.index.IndexRecord;
import org.vestibule.words.Language;
import org.vestibule.words.TradeWords;
import org.vestibule.words.Words;

/** A photograph with its margins and words, as templates need it. */
final class Pictured {

  private static final Set<String> ABOUT_THE_FILE =
      Set.of("Camera", "Picture", "How it was made", "Object", "Series", "Study", "In words");

  private final Site site;
  private final Words words;
  private final TradeWords trade;
  private final Language language;

  Pictured(Site site, Asked asked, ViewCatalogue views) {
    this.site = site;
    this.language = asked.language();
    this.words = PageWords.of(language);
    this.trade = new TradeWords(words, views);
  }

  Map<String, Object> model(IndexRecord record, Faces.Facts facts) {
    Map<String, Object> model = new HashMap<>(brief(record));
    model.put("width", facts.width());
    model.put("height", facts.height());
    model.putAll(new Margins(words, trade).of(facts.orientation()));
    model.put("patient", record.who().name());
    model.put("number", record.who().patientId());
    return model;
  }

  private Map<String, Object> brief(IndexRecord record) {
    LocalDate day = record.day();
    return Map.of(
        "key", site.photoKeys().of(new ContentHash(record.hash())),
        "view", Results.view(record, trade, words),
        "teeth", trade.teeth(record.shows().teeth(), site.practice().settings().notation()),
        "stage", trade.stage(record.shows().stage()),
        "day", day == null ? words.say("no-date") : Results.days(language).format(day),
        "iso", day == null ? "" : day.toString());
  }

  /** The facts, their labels in the page's language; either those about the file or the others. */
  List<Map<String, Object>> facts(Faces.Facts facts, boolean aboutTheFile) {
    return facts.facts().stream()
        .filter(line -> ABOUT_THE_FILE.contains(line.label()) == aboutTheFile)
        .map(
            line ->
                Map.<String, Object>of("label", trade.label(line.label()), "value", line.value()))
        .toList();
  }

  /** True if two pictures lie the same way, so that one can be laid over the other. */
  static boolean sameMargins(Map<String, Object> one, Map<String, Object> other) {
    return Objects.equals(one.get("view"), other.get("view"))
        && List.of(Edge.values()).stream()
            .map(edge -> edge.name().toLowerCase(Locale.ROOT))
            .allMatch(edge -> Objects.equals(one.get(edge), other.get(edge)));
  }

  /** Another photograph of the same kind: earlier, later, or this one. */
  Map<String, Object> other(IndexRecord other, IndexRecord here) {
    boolean same = other.hash().equals(here.hash());
    Map<String, Object> model = new HashMap<>(brief(other));
    model.put("here", same);
    model.put(
        "when",
        words.say(same ? "kind-here" : before(other, here) ? "kind-earlier" : "kind-later"));
    return model;
  }

  /** True if it was taken before the other; the order is always the same. */
  static boolean before(IndexRecord one, IndexRecord other) {
    int byTime = time(one).compareTo(time(other));
    return byTime == 0 ? one.hash().compareTo(other.hash()) < 0 : byTime < 0;
  }

  private static LocalDateTime time(IndexRecord record) {
    LocalDate day = record.day();
    LocalDateTime taken = record.takenAt();
    return taken != null ? taken : day == null ? LocalDateTime.MIN : day.atStartOfDay();
  }
}
