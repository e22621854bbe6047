package org.vestibule.web;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.FormatStyle;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Browse;
import org.vestibule.store.index.IndexRecord;
import org.vestibule.words.Language;
import org.vestibule.words.TradeWords;
import org.vestibule.words.Words;

/** Photographs that answer, grouped by visit, as their template needs them. */
final class Results {

  /** One visit of one patient; photographs that wait have none. */
  private record Group(String issuer, String patient, String visit) {}

  private final Site site;
  private final SearchQuery query;
  private final Words words;
  private final TradeWords trade;
  private final DateTimeFormatter days;
  private final String queryText;
  private final Sentences sentences;

  Results(Site site, Asked asked, SearchQuery query) {
    this.site = site;
    this.query = query;
    this.words = PageWords.of(asked.language());
    this.trade = new TradeWords(words, site.practice().views());
    this.days = days(asked.language());
    this.queryText = asked.queryText();
    this.sentences = Sentences.of(asked, site);
  }

  /** How many there are, in words. */
  static String count(Words words, Browse.Answer answer) {
    return answer.more()
        ? words.say("results-over", answer.total())
        : words.count("results", answer.total());
  }

  static DateTimeFormatter days(Language language) {
    return new DateTimeFormatterBuilder()
        .appendLocalized(FormatStyle.LONG, null)
        .toFormatter(language.locale());
  }

  static Map<String, Object> refused(Refused<?> refused, Sentences sentences) {
    Map<String, Object> model = sentences.model(refused.reason(), refused.advice());
    model.put("count", "");
    model.put("understood", "");
    model.put("trouble", true);
    model.put("visits", List.of());
    model.put("more", "");
    return model;
  }

  /**
   * The groups, in the order of the first photograph of each.
   *
   * @param shown how many are shown up to and with this page
   */
  Map<String, Object> model(Browse.Answer answer, int shown) {
    Map<Group, List<Browse.Hit>> groups = new LinkedHashMap<>();
    answer
        .hits()
        .forEach(hit -> groups.computeIfAbsent(group(hit), g -> new ArrayList<>()).add(hit));
    Map<String, Object> model = new HashMap<>();
    model.put("count", count(words, answer));
    Sentences.Said understood = sentences.say(String.join("; ", answer.understood()));
    model.put("understood", understood.words());
    model.put("spoken", understood.language());
    model.put("trouble", false);
    model.put("visits", groups.values().stream().map(this::visit).toList());
    model.put("more", answer.more() || answer.total() > shown ? more() : "");
    return model;
  }

  private String more() {
    String rest = queryText.replaceAll("(^|&)page=\\d*", "").replaceFirst("^&", "");
    return "/?" + (rest.isEmpty() ? "" : rest + "&") + "page=" + (query.page() + 1);
  }

  private static Group group(Browse.Hit hit) {
    IndexRecord.Who who = hit.record().who();
    return new Group(who.issuer(), who.patientId(), who.visitKey());
  }

  private Map<String, Object> visit(List<Browse.Hit> hits) {
    IndexRecord first = hits.get(0).record();
    LocalDate day = first.who().visitDate() == null ? first.day() : first.who().visitDate();
    return Map.of(
        "patient", first.who().name(),
        "number", first.who().patientId(),
        "day", said(day),
        "iso", day == null ? "" : day.toString(),
        "photographs", hits.stream().map(this::photograph).toList());
  }

  private String said(@Nullable LocalDate day) {
    return day == null ? words.say("no-date") : days.format(day);
  }

  private Map<String, Object> photograph(Browse.Hit hit) {
    IndexRecord record = hit.record();
    Map<String, Object> model = new HashMap<>();
    model.put("key", site.photoKeys().of(new ContentHash(record.hash())));
    model.put("filed", record.filed());
    model.put("view", view(record, trade, words));
    model.put("teeth", trade.teeth(record.shows().teeth(), query.notation()));
    model.put("stage", trade.stage(record.shows().stage()));
    model.put("closeness", words.find("close-" + slug(hit.closeness())).orElse(hit.closeness()));
    model.put("day", said(record.day()));
    return model;
  }

  private static String slug(String text) {
    return text.replaceAll("[^a-z]+", "-");
  }

  static String view(IndexRecord record, TradeWords trade, Words words) {
    String key = record.shows().viewKey();
    return key.isEmpty() ? words.say("no-view") : trade.view(key);
  }
}
