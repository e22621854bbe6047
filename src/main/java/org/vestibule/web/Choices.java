package org.vestibule.web;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.vestibule.dental.Notation;
import org.vestibule.dental.Series;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.words.TradeWords;
import org.vestibule.words.Words;

/** What can be chosen on the search page, as its template needs it. */
final class Choices {

  private Choices() {}

  static List<Map<String, Object>> notations(Notation chosen, Words words) {
    return Arrays.stream(Notation.values())
        .map(
            one ->
                Map.<String, Object>of(
                    "value", SearchQuery.word(one),
                    "word", words.say("notation-" + SearchQuery.word(one)),
                    "chosen", one == chosen))
        .toList();
  }

  /** The views of the baseline series in sight, the others behind a fold. */
  static Map<String, Object> views(ViewCatalogue catalogue, List<View> chosen, TradeWords trade) {
    List<Map<String, Object>> usual = new ArrayList<>();
    List<Map<String, Object>> others = new ArrayList<>();
    boolean open = false;
    for (View view : catalogue.all()) {
      boolean isUsual = view.series().contains(Series.BASELINE);
      open = open || (!isUsual && chosen.contains(view));
      (isUsual ? usual : others)
          .add(
              Map.of("key", view.key(), "word", trade.view(view), "chosen", chosen.contains(view)));
    }
    return Map.of("usual", usual, "others", others, "open", open);
  }
}
