package org.vestibule.release;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.vestibule.dental.Tooth;

/**
 * What a reader of the page can choose to see: everything, one view, one tooth. It is one group of
 * radio buttons that hide list items by style rules alone, so that the page runs no script and the
 * arrow keys walk through the choices.
 */
final class PageFilters {

  private final SheetWords words;
  private final List<SheetRow> rows;
  private final Map<String, Long> views = new LinkedHashMap<>();
  private final Map<Integer, Tooth> teeth = new TreeMap<>();

  PageFilters(Sheet sheet) {
    this.rows = sheet.rows();
    this.words = sheet.words();
    for (SheetRow row : rows) {
      views.merge(row.view(), 1L, Long::sum);
      row.named().forEach(tooth -> teeth.put(tooth.iso(), tooth));
    }
  }

  /** The buttons themselves; they stand before everything that they hide. */
  String radios() {
    StringBuilder html = new StringBuilder(radio("all", true));
    keys().forEach(key -> html.append(radio(key, false)));
    return html.toString();
  }

  private static String radio(String key, boolean chosen) {
    return "<input type=\"radio\" name=\"show\" id=\""
        + key
        + "\""
        + (chosen ? " checked" : "")
        + ">\n";
  }

  private List<String> keys() {
    List<String> keys = new ArrayList<>();
    for (int i = 1; i <= views.size(); i++) {
      keys.add("v" + i);
    }
    teeth.keySet().forEach(iso -> keys.add("t" + iso));
    return keys;
  }

  /** For each choice: what it hides, how its words look while it is chosen or has the keyboard. */
  String style() {
    StringBuilder css = new StringBuilder();
    keys().forEach(key -> css.append(rule("#" + key + ":checked~ul>li:not(." + key + ")")));
    List<String> all = new ArrayList<>(List.of("all"));
    all.addAll(keys());
    css.append(
            all.stream()
                .map(key -> "#" + key + ":checked~nav [for=" + key + "]")
                .collect(Collectors.joining(",")))
        .append("{background:#2f5d62;border-color:#2f5d62;color:#fff}")
        .append(
            all.stream()
                .map(key -> "#" + key + ":focus-visible~nav [for=" + key + "]")
                .collect(Collectors.joining(",")))
        .append("{outline:3px solid #d08c3a;outline-offset:2px}");
    return css.toString();
  }

  private static String rule(String hidden) {
    return hidden + "{display:none}";
  }

  /** The words to choose by view. */
  String choices() {
    StringBuilder html = new StringBuilder("<p class=\"views\">");
    html.append(choice("all", words.say("all"), rows.size()));
    int number = 1;
    for (Map.Entry<String, Long> view : views.entrySet()) {
      html.append(choice("v" + number++, words.view(view.getKey()), view.getValue()));
    }
    return html.append("</p>\n").toString();
  }

  private static String choice(String key, String words, long count) {
    return "<label for=\"" + key + "\">" + HtmlSheet.escaped(words) + " (" + count + ")</label>\n";
  }

  /** The classes of a row's list item: by which choices it is shown. */
  String classes(SheetRow row) {
    int view = List.copyOf(views.keySet()).indexOf(row.view()) + 1;
    return row.named().stream()
        .map(tooth -> " t" + tooth.iso())
        .collect(Collectors.joining("", "v" + view, ""));
  }

  /** The tooth, if a photograph names it. */
  Optional<Tooth> named(int iso) {
    return Optional.ofNullable(teeth.get(iso));
  }

  /** How many photographs name it. */
  long count(Tooth tooth) {
    return rows.stream().filter(row -> row.named().contains(tooth)).count();
  }
}
