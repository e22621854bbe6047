package org.vestibule.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.vestibule.dental.Stage;
import org.vestibule.dental.View;
import org.vestibule.words.TradeWords;
import org.vestibule.words.Words;

/** What photographs are labelled with, as the labelling page's template needs it. */
final class SortingTools {

  private final Site site;
  private final Words words;
  private final TradeWords trade;

  SortingTools(Site site, Asked asked) {
    this.site = site;
    this.words = PageWords.of(asked.language());
    this.trade = new TradeWords(words, site.practice().views());
  }

  /** What the labelling page offers for every photograph. */
  Map<String, Object> model() {
    var settings = site.practice().settings();
    String notation = SearchQuery.word(settings.notation());
    return Map.of(
        "script", "sorting.js",
        "query", Map.of("notation", notation),
        "notations", Choices.notations(settings.notation(), words),
        "chart", new ToothChart(trade, List.of()).model(),
        "views", site.practice().views().all().stream().map(this::view).toList(),
        "stages", List.of(Stage.values()).stream().map(this::stage).toList());
  }

  private Map<String, Object> view(View view) {
    List<String> phrases = new ArrayList<>(List.of(trade.view(view)));
    phrases.addAll(view.words());
    return Map.of(
        "key", view.key(),
        "word", trade.view(view),
        "phrases", String.join("|", phrases).toLowerCase(Locale.ROOT));
  }

  private Map<String, Object> stage(Stage stage) {
    return Map.of("value", stage.words(), "word", trade.stage(stage.words()));
  }
}
