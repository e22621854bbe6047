package org.vestibule.dental;

import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.vestibule.base.Outcome;

/** The views a practice takes: the standard ones, and those of its own file. */
public final class ViewCatalogue {

  private static final int MOST_NAMED = 6;
  private static final ViewCatalogue STANDARD = ofResource();

  private final List<View> views;
  private final Map<Set<String>, View> byPhrase;
  private final Map<String, List<Phrase>> phrasesOfWord = new HashMap<>();
  private final NavigableSet<String> vocabulary;

  /** Words in any order, and the view that they name. */
  private record Phrase(Set<String> said, View view) {}

  private ViewCatalogue(List<View> views, Map<Set<String>, View> byPhrase) {
    this.views = List.copyOf(views);
    this.byPhrase = Map.copyOf(byPhrase);
    NavigableSet<String> words = new TreeSet<>(ViewWords.synonyms());
    byPhrase.keySet().forEach(words::addAll);
    byPhrase.forEach(
        (said, view) -> {
          Phrase phrase = new Phrase(said, view);
          for (String word : said) {
            phrasesOfWord.computeIfAbsent(word, any -> new ArrayList<>()).add(phrase);
          }
        });
    this.vocabulary = Collections.unmodifiableNavigableSet(words);
  }

  /** The catalogue that comes with the program. */
  public static ViewCatalogue standard() {
    return STANDARD;
  }

  private static ViewCatalogue ofResource() {
    return new ViewCatalogue(List.of(), Map.of()).with(CsvTable.ofResource("views.csv")).orThrow();
  }

  /**
   * This catalogue and the views of a practice's own file, which has the columns of the standard
   * table. A key or phrase that is already taken is refused, with line and column.
   *
   * @throws IOException if the file can't be read
   */
  public Outcome<ViewCatalogue> with(Reader practiceFile) throws IOException {
    return CsvTable.read(practiceFile).then(this::with);
  }

  private Outcome<ViewCatalogue> with(CsvTable table) {
    Optional<Outcome<ViewCatalogue>> wrongHeader = ViewRow.refuseHeader(table);
    if (wrongHeader.isPresent()) {
      return wrongHeader.get();
    }
    List<View> more = new ArrayList<>(views);
    Map<Set<String>, View> phrases = new HashMap<>(byPhrase);
    for (CsvTable.Row row : table.rows()) {
      Outcome<View> read = ViewRow.read(row);
      if (!(read instanceof Outcome.Done<View> done)) {
        return ((Outcome.Refused<View>) read).as();
      }
      View view = done.value();
      if (more.stream().anyMatch(other -> other.key().equals(view.key()))) {
        return row.refused("key", "the key " + view.key() + " is already taken", "choose another");
      }
      for (String phrase : view.words()) {
        View other = phrases.putIfAbsent(ViewWords.tokens(phrase), view);
        if (other != null && !other.key().equals(view.key())) {
          return row.refused(
              "words", "\"" + phrase + "\" already means " + other.name(), "choose other words");
        }
      }
      more.add(view);
    }
    return Outcome.done(new ViewCatalogue(more, phrases));
  }

  /** All views, the standard ones first. */
  public List<View> all() {
    return views;
  }

  public Optional<View> byKey(String key) {
    return views.stream().filter(view -> view.key().equals(key)).findFirst();
  }

  /** Every phrase by which a view can be called, its key and name included. */
  public NavigableSet<String> phrases() {
    return views.stream()
        .flatMap(view -> view.words().stream())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** Every single word that occurs in a phrase or stands for one that does, in lower case. */
  public NavigableSet<String> vocabulary() {
    return vocabulary;
  }

  /**
   * All views that one of whose phrases contains all of these words, such as every occlusal view
   * for "occlusal"; for searching, where several views may be meant.
   */
  public List<View> allNaming(String words) {
    Set<String> asked = ViewWords.tokens(words);
    if (asked.isEmpty()) {
      return List.of();
    }
    Set<String> named = new HashSet<>();
    String one = asked.iterator().next();
    for (Phrase phrase : phrasesOfWord.getOrDefault(one, List.of())) {
      if (phrase.said.containsAll(asked)) {
        named.add(phrase.view.key());
      }
    }
    return views.stream().filter(view -> named.contains(view.key())).toList();
  }

  /**
   * The one view that the words name, in any order. Words that could mean several views are refused
   * with their names; so are unknown ones, with the nearest.
   */
  public Outcome<View> find(String words) {
    Set<String> asked = ViewWords.tokens(words);
    if (asked.isEmpty()) {
      return Outcome.refused(
          "\"" + words.trim() + "\" names no view", "say a view, such as upper occlusal");
    }
    View exact = byPhrase.get(asked);
    if (exact != null) {
      return Outcome.done(exact);
    }
    List<View> partly = allNaming(words);
    if (!partly.isEmpty()) {
      return Outcome.refused(
          "\""
              + words.trim()
              + "\" "
              + (partly.size() > 1 ? "could mean several views" : "is not a full name of a view"),
          "say which: " + names(partly));
    }
    for (String word : asked) {
      if (!vocabulary().contains(word)) {
        return Outcome.refused(
            "\"" + word + "\" is not a word for a view",
            new NearestWords(vocabulary())
                .suggestion(word, "see the view catalogue for the words"));
      }
    }
    return Outcome.refused(
        "no view is called \"" + words.trim() + "\"",
        new NearestWords(phrases())
            .suggestion(words.trim(), "see the view catalogue for the names of views"));
  }

  private static String names(List<View> views) {
    String names =
        views.stream().limit(MOST_NAMED).map(View::name).collect(Collectors.joining("; "));
    return views.size() > MOST_NAMED
        ? names + "; or " + (views.size() - MOST_NAMED) + " more"
        : names;
  }
}
