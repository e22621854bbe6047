package org.vestibule.web;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dental.Stage;
import org.vestibule.flow.Browse;
import org.vestibule.flow.Practice;
import org.vestibule.words.TradeWords;
import org.vestibule.words.Words;

/** The first page: chart, views and words on one side, photographs on the other. */
final class Search {

  private static final int A_PAGE = 48;

  private final Site site;
  private final Practice practice;
  private final Browse browse;

  Search(Site site) {
    this.site = site;
    this.practice = site.practice();
    this.browse = new Browse(practice);
  }

  /** The whole page. */
  Answer page(Asked asked) throws IOException {
    SearchQuery query = query(asked);
    Words words = PageWords.of(asked.language());
    TradeWords trade = new TradeWords(words, practice.views());
    Map<String, Object> model = new HashMap<>(found(asked, query));
    model.put("title", words.say("search-title"));
    model.put("script", "search.js");
    model.put("query", fields(query));
    model.put("notations", Choices.notations(query.notation(), words));
    model.put("chart", new ToothChart(trade, query.teeth()).model());
    model.put("views", Choices.views(practice.views(), query.views(), trade));
    model.put("stages", stages(query, trade));
    model.put("closest", query.order() == Browse.Order.CLOSEST);
    return Answer.page("search", model);
  }

  /** The photographs alone, for a script that puts them into the page. */
  Answer results(Asked asked) throws IOException {
    return Answer.part("results", found(asked, query(asked)));
  }

  private SearchQuery query(Asked asked) {
    return SearchQuery.of(asked, practice.views(), practice.settings().notation());
  }

  private static Map<String, String> fields(SearchQuery query) {
    return Map.of(
        "words", query.words(),
        "patient", query.patient(),
        "from", query.from(),
        "to", query.to(),
        "notation", SearchQuery.word(query.notation()));
  }

  private static List<Map<String, Object>> stages(SearchQuery query, TradeWords trade) {
    return List.of(Stage.values()).stream()
        .map(
            stage ->
                Map.<String, Object>of(
                    "value", stage.words(),
                    "word", trade.stage(stage.words()),
                    "chosen", stage.words().equals(query.stage())))
        .toList();
  }

  private Map<String, Object> found(Asked asked, SearchQuery query) throws IOException {
    int offset = (query.page() - 1) * A_PAGE;
    Outcome<Browse.Answer> answer =
        query.isEmpty()
            ? browse.newest(offset, A_PAGE, asked.who())
            : browse.ask(
                query.question(), query.options(), query.order(), offset, A_PAGE, asked.who());
    if (answer instanceof Done<Browse.Answer> done) {
      return new Results(site, asked, query).model(done.value(), offset + A_PAGE);
    }
    return Results.refused((Refused<Browse.Answer>) answer, Sentences.of(asked, site));
  }
}
