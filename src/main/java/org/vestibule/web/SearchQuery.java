package org.vestibule.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome.Done;
import org.vestibule.dental.Notation;
import org.vestibule.dental.Tooth;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.flow.Browse.Order;
import org.vestibule.search.QuestionOptions;

/**
 * What is looked for, as the address of the page says it.
 *
 * @param words in the words of {@code find}
 * @param teeth chosen on the chart
 * @param views chosen
 * @param stage its word, or empty
 * @param patient the patient's number, or empty
 * @param from first day as it was written, or empty
 * @param to last day, likewise
 * @param notation how teeth are written on the chart
 * @param page which page of results, from 1
 */
record SearchQuery(
    String words,
    List<Tooth> teeth,
    List<View> views,
    String stage,
    String patient,
    String from,
    String to,
    Order order,
    Notation notation,
    int page) {

  private static final int LAST_PAGE = 200;

  SearchQuery {
    teeth = List.copyOf(teeth);
    views = List.copyOf(views);
  }

  /** What the address asks; values that mean nothing are left out. */
  static SearchQuery of(Asked asked, ViewCatalogue catalogue, Notation usual) {
    return new SearchQuery(
        asked.query("q"),
        asked.queries("tooth").stream().flatMap(SearchQuery::tooth).distinct().toList(),
        asked.queries("view").stream().flatMap(key -> catalogue.byKey(key).stream()).toList(),
        asked.query("stage"),
        asked.query("patient"),
        asked.query("from"),
        asked.query("to"),
        asked.query("order").equals("newest") ? Order.NEWEST : Order.CLOSEST,
        notation(asked.query("notation"), usual),
        page(asked.query("page")));
  }

  private static Stream<Tooth> tooth(String iso) {
    return iso.matches("\\d\\d") && Tooth.ofIso(Integer.parseInt(iso)) instanceof Done<Tooth> tooth
        ? Stream.of(tooth.value())
        : Stream.empty();
  }

  private static Notation notation(String word, Notation usual) {
    for (Notation one : Notation.values()) {
      if (word(one).equals(word)) {
        return one;
      }
    }
    return usual;
  }

  private static int page(String text) {
    return text.matches("\\d{1,3}") ? Math.max(1, Math.min(LAST_PAGE, Integer.parseInt(text))) : 1;
  }

  /** A notation's word in addresses. */
  static String word(Notation notation) {
    return switch (notation) {
      case ISO_3950 -> "iso";
      case UNIVERSAL -> "universal";
      case PALMER -> "palmer";
    };
  }

  /** True if nothing is asked, so that everything answers. */
  boolean isEmpty() {
    return words.isEmpty()
        && teeth.isEmpty()
        && views.isEmpty()
        && stage.isEmpty()
        && patient.isEmpty()
        && from.isEmpty()
        && to.isEmpty();
  }

  /** The words, with several views as alternatives among them. */
  String question() {
    List<String> all = new ArrayList<>();
    all.add(words);
    if (views.size() > 1) {
      views.forEach(view -> all.add("view " + view.name().toLowerCase(Locale.ROOT)));
    }
    return String.join(", ", all.stream().filter(text -> !text.isEmpty()).toList());
  }

  QuestionOptions options() {
    String numbers = teeth.stream().map(Tooth::toString).collect(Collectors.joining(", "));
    return new QuestionOptions(
        orNull(patient),
        teeth.isEmpty() ? null : "FDI " + numbers,
        views.size() == 1 ? views.get(0).key() : null,
        orNull(from),
        orNull(to),
        orNull(stage),
        null,
        null,
        null);
  }

  private static @Nullable String orNull(String text) {
    return text.isEmpty() ? null : text;
  }
}
